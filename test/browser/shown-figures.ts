/** The figures in the tables of a built page: what each measures, and where it leads. */
import { readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { parseHTML } from 'linkedom';

/** What a figure measures. */
export type Measure = 'hours' | 'paid' | 'cost' | 'without-labour' | 'budgeted' | 'quantity' | 'money' | 'left' | 'left-money' | 'opening';

/** A page and anchor, from the root of the site. */
export interface Target {
  readonly page: string;
  readonly anchor: string;
}

export interface ShownFigure {
  readonly page: string;
  /** The class of its table, and the words over its column. */
  readonly where: string;
  readonly text: string;
  readonly measure: Measure | null;
  /** Null when it is no link. */
  readonly to: Target | null;
}

const read = new Map<string, Document>();

export function pageAt(folder: string, page: string): Document {
  const file = join(folder, page);
  const known = read.get(file) ?? parseHTML(readFileSync(file, 'utf8')).document;
  read.set(file, known);
  return known;
}

/** `1,204.50`, `−3.00`, `£12.00`, `12:30`, `12 h 30 min` as a number; time is in minutes, in columns and in words alike. */
export function numberIn(text: string): number {
  const time = /^(?:([\d,]+) h)? ?(?:(\d+) min)?$/.exec(text.trim()) ?? /^([\d,]+):(\d\d)$/.exec(text.trim());
  if (time && text.trim() !== '') return Number((time[1] ?? '0').replaceAll(',', '')) * 60 + Number(time[2] ?? 0);
  const digits = text.replaceAll(/[^\d.\u2212]/g, '').replace('\u2212', '-');
  return digits === '' ? 0 : Number(digits);
}

/** The words over the columns of a table. */
export function columnsOf(table: Element): string[] {
  return [...table.querySelectorAll('thead th')].map(wordsOf);
}

export function wordsOf(element: Element | null | undefined): string {
  return element?.textContent?.trim() ?? '';
}

export const BY_COLUMN: Readonly<Record<string, Measure>> = {
  Hours: 'hours',
  Paid: 'paid',
  'Job cost': 'cost',
  Money: 'without-labour',
  Added: 'budgeted',
  Total: 'budgeted',
};
const BY_ROW: Readonly<Record<string, Measure>> = {
  'Paid out': 'paid',
  'Job cost': 'cost',
  'Labour at its rate': 'cost',
  'Consumables on the shelf': 'left-money',
  'Opening stock': 'opening',
};
/** Columns that say what a figure is held against. */
const HELD_AGAINST = /^(?:of|Share|Left)$/;

function measureOf(table: Element, column: string, cell: Element): Measure | null {
  if (table.classList.contains('of-minutes')) return 'hours';
  if (table.classList.contains('of-gross')) return wordsOf(table.querySelector('caption')).startsWith('Paid') ? 'paid' : 'cost';
  if (table.classList.contains('reconcile')) return BY_ROW[wordsOf(cell.previousElementSibling)] ?? null;
  if (table.classList.contains('shelf')) return column.startsWith('Opening') ? 'opening' : column === 'Left' ? 'left' : 'left-money';
  if (table.classList.contains('stock')) return column.includes(' ') ? 'money' : 'quantity';
  return BY_COLUMN[column] ?? null;
}

/**
 * Every figure in the tables of a page. What is not a link in a table's last line is left out: it sums the
 * lines above it.
 */
export function figuresOn(folder: string, page: string, tables = 'table'): ShownFigure[] {
  return [...pageAt(folder, page).querySelectorAll(`main ${tables}`)].flatMap((table) => {
    const columns = columnsOf(table);
    return [...table.querySelectorAll('td.num')].flatMap((cell): ShownFigure[] => {
      const column = columns[[...(cell.parentElement?.children ?? [])].indexOf(cell)] ?? '';
      const held = !table.classList.contains('shelf') && !table.classList.contains('stock') && HELD_AGAINST.test(column);
      const href = cell.querySelector('a')?.getAttribute('href') ?? null;
      if (wordsOf(cell) === '' || held || (href === null && cell.closest('tfoot'))) return [];
      const to = href === null ? null : targetOf(page, href);
      return [{ page, where: `${table.className} ${column}`, text: wordsOf(cell), measure: measureOf(table, column, cell), to }];
    });
  });
}

/** Where a link on a page leads. */
export function targetOf(page: string, href: string): Target {
  const [path = '', anchor = ''] = href.split('#');
  return { page: path === '' ? page : posix.join(posix.dirname(page), decodeURIComponent(path)), anchor: decodeURIComponent(anchor) };
}
