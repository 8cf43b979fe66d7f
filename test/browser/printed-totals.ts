/** What is printed at the place a figure leads to: the facts of a page, a section's total, one row, or a table's last line. */
import { BY_COLUMN, columnsOf, type Measure, numberIn, pageAt, type Target, wordsOf } from './shown-figures.ts';

export type Printed = Partial<Readonly<Record<Measure, number>>>;

export function printedAt(folder: string, { page, anchor }: Target): Printed {
  const document = pageAt(folder, page);
  if (anchor === '') return page === 'consumables.html' ? lastLine(document.querySelector('table.stock')) : factsOf(document);
  const element = document.getElementById(anchor);
  if (!element) return {};
  if (element.localName === 'tr') return rowOf(element);
  if (element.localName === 'section') return sectionOf(element);
  return lastLine(tableAfter(element));
}

/** The first table after a heading. */
function tableAfter(heading: Element): Element | null {
  let next = heading.nextElementSibling;
  while (next && next.localName !== 'h2' && !next.querySelector('table')) next = next.nextElementSibling;
  return next?.querySelector('table') ?? null;
}

const FACTS: Readonly<Record<string, Measure>> = {
  'Job cost': 'cost',
  'of it without labour': 'without-labour',
  'of that against budgets': 'budgeted',
  'Paid out': 'paid',
  Hours: 'hours',
};

function factsOf(document: Document): Printed {
  return Object.fromEntries(
    [...document.querySelectorAll('main dl.facts dt')].flatMap((term) => {
      const measure = FACTS[wordsOf(term)];
      return measure ? [[measure, numberIn(wordsOf(term.nextElementSibling))]] : [];
    }),
  );
}

/** A month has its total in its table's last line; a year says it in its heading. */
function sectionOf(section: Element): Printed {
  const own = [...section.children].find((child) => child.classList.contains('scroll'));
  if (own) return lastLine(own.querySelector('table'));
  const said = /job cost (\S+), paid (\S+?)(?:,\s+(.*))?$/s.exec(wordsOf(section.querySelector('h2')));
  return { cost: numberIn(said?.[1] ?? ''), paid: numberIn(said?.[2] ?? ''), hours: numberIn(said?.[3] ?? '') };
}

function rowOf(row: Element): Printed {
  const [first = 0, second = 0, third = 0, fourth = 0] = [...row.querySelectorAll('td.num')].map((cell) => numberIn(wordsOf(cell)));
  if (row.classList.contains('running-total')) {
    const without = /without labour (\S+)/.exec(wordsOf(row.querySelector('th')))?.[1] ?? '';
    return { hours: first, paid: second, cost: third, 'without-labour': numberIn(without) };
  }
  if (row.closest('table')?.classList.contains('entries')) return { hours: first, cost: second };
  return { quantity: first, money: second, left: third, 'left-money': fourth, opening: second };
}

/** The last line of a table, by the words over its columns. */
function lastLine(table: Element | null): Printed {
  const printed: Record<string, number> = {};
  const names = table ? columnsOf(table) : [];
  let at = 0;
  for (const cell of table?.querySelector('tfoot tr')?.children ?? []) {
    const measure = table && measureUnder(table, names[at] ?? '');
    if (measure && cell.classList.contains('num')) printed[measure] = numberIn(wordsOf(cell));
    at += Number(cell.getAttribute('colspan') ?? 1);
  }
  return printed;
}

function measureUnder(table: Element, column: string): Measure | null {
  // All budgets together are what the running spend is held against.
  if (table.classList.contains('budgets') && column === 'Money') return 'budgeted';
  if (column.startsWith('Opening ')) return 'opening';
  return column.startsWith('Left ') ? 'left-money' : (BY_COLUMN[column] ?? null);
}
