/**
 * Tables as markup. A column is its head and what stands under it in one object, so that head and cells cannot
 * fall apart; on a phone, where a row is a block, the same head stands before what the row holds.
 */
import { html, type Markup, type Piece } from '../page/html.ts';

/** @template Sum what a line of totals is made from; a table without totals has none */
export interface Column<Row, Sum = never> {
  readonly head: string;
  /** What the head opens. */
  readonly opens?: string | null;
  /** The head is for who hears the table: what stands under it needs none. */
  readonly unseen?: boolean;
  /** Names for the style sheet, of head and cells: `num` sets figures to the right, `date` keeps a day whole. */
  readonly set?: string;
  readonly cell: (row: Row) => Piece;
  /** Names of one cell only. */
  readonly look?: (row: Row) => string | false | undefined;
  /** The cell names its row. */
  readonly names?: boolean;
  /** In a block its words say by themselves what they are, and the head is left out. */
  readonly bare?: boolean;
  /** What stands in this column of a line of totals; the words of the line run up to the first column that has it. */
  readonly sum?: (sum: Sum) => Piece;
}

/** A line across a table: the head of a group, a total, a running total. */
export interface Line<Sum> {
  readonly words: Piece;
  /** Null: the words run across the whole table. */
  readonly sum: Sum | null;
  readonly id?: string | undefined;
  readonly set?: string;
}

export interface Group<Row, Sum = never> {
  readonly id?: string | undefined;
  readonly head?: Line<Sum> | null;
  readonly rows: readonly Row[];
}

export interface TableOf<Row, Sum = never> {
  /** What it is, for who hears it, and for the region in which it scrolls. */
  readonly label: string;
  readonly caption?: Piece;
  /** Names for the style sheet. */
  readonly set?: string;
  /** The words of each row say what stands beside them: the heads are for who hears the table. */
  readonly headless?: boolean;
  /** On a phone its rows stay rows: an account of few columns, or of so many that it scrolls. Else a row is a block there. */
  readonly keepsRows?: boolean;
  /** False for one that this journal has no use for, such as money where it has none. */
  readonly columns: readonly (Column<Row, Sum> | false)[];
  readonly groups: readonly Group<Row, Sum>[];
  readonly foot?: readonly Line<Sum>[];
  /** The anchor of a row; `nth` counts from 0 within its group. */
  readonly anchor?: (row: Row, nth: number) => string | null;
  /** Attributes `data-…` of a row, for scripts and the style sheet; null for none. */
  readonly data?: (row: Row) => Readonly<Record<string, string | null>>;
  /** A line of totals that stands under a row. */
  readonly under?: (row: Row) => Line<Sum> | null | undefined;
  /** Where pages share rows: gives back what was set for one before, else what is made. */
  readonly shared?: (row: Row, make: () => string) => string;
}

/** A table that is set: what the component shows. */
export interface SetTable {
  readonly label: string;
  readonly markup: string;
}

/** The rows of a table that has no groups. */
export function rows<Row, Sum = never>(list: readonly Row[]): readonly Group<Row, Sum>[] {
  return [{ rows: list }];
}

/** A table whose columns are all there. */
interface Whole<Row, Sum> extends Omit<TableOf<Row, Sum>, 'columns'> {
  readonly columns: readonly Column<Row, Sum>[];
}

export function setTable<Row, Sum = never>(given: TableOf<Row, Sum>): SetTable {
  const columns = given.columns.filter((column) => column !== false);
  const table: Whole<Row, Sum> = { ...given, columns };
  const { label, caption, groups, foot = [] } = table;
  const set = [table.set, !table.keepsRows && 'blocks'].filter(Boolean).join(' ');
  const bodies = groups.map((group) => bodyOf(table, group));
  const { markup } = html`<table${classOf(set)}>${caption && html`<caption>${caption}</caption>`}${headOf(table)}${bodies}${
    foot.length > 0 && html`<tfoot>${foot.map((line) => lineOf(columns, line, 'row'))}</tfoot>`
  }</table>`;
  return { label, markup };
}

function headOf<Row, Sum>({ columns, headless = false }: Whole<Row, Sum>): Markup {
  const cells = columns.map(({ head, opens, unseen, set }) => {
    const words = unseen ? html`<span class="seen-by-readers-only">${head}</span>` : opens ? html`<a href="${opens}">${head}</a>` : head;
    return html`<th scope="col"${classOf(set)}>${words}</th>`;
  });
  return html`<thead${headless && classOf('seen-by-readers-only')}><tr>${cells}</tr></thead>`;
}

function bodyOf<Row, Sum>(table: Whole<Row, Sum>, { id, head, rows: list }: Group<Row, Sum>): Markup {
  const lines = list.map((row, nth) => {
    const under = table.under?.(row);
    const make = (): string => rowOf(table, row, nth).markup;
    const markup = table.shared ? table.shared(row, make) : make();
    return under ? html`${{ markup }}${lineOf(table.columns, under, 'row')}` : { markup };
  });
  return html`<tbody${idOf(id)}>${head && lineOf(table.columns, head, 'rowgroup')}${lines}</tbody>`;
}

function rowOf<Row, Sum>({ columns, anchor, data }: Whole<Row, Sum>, row: Row, nth: number): Markup {
  const attributes = Object.entries(data?.(row) ?? {}).map(([name, value]) => value !== null && html` data-${name}="${value}"`);
  return html`<tr${idOf(anchor?.(row, nth))}${attributes}>${columns.map((column) => cellOf(column, row))}</tr>`;
}

function cellOf<Row, Sum>(column: Column<Row, Sum>, row: Row): Markup {
  const { head, set, names = false, bare = names } = column;
  const held = html`${column.cell(row)}`;
  const label = !bare && held.markup !== '' && html` data-label="${head}"`;
  const look = [set, column.look?.(row)].filter(Boolean).join(' ');
  const heading = names && held.markup !== '';
  return heading ? html`<th scope="row"${classOf(look)}${label}>${held}</th>` : html`<td${classOf(look)}${label}>${held}</td>`;
}

function lineOf<Row, Sum>(columns: readonly Column<Row, Sum>[], { words, sum, id, set }: Line<Sum>, scope: 'row' | 'rowgroup'): Markup {
  const first = sum === null ? -1 : columns.findIndex((column) => column.sum !== undefined);
  const span = first < 0 ? columns.length : first;
  const figures =
    sum !== null &&
    columns.slice(span).map((column) => {
      const held = html`${column.sum?.(sum)}`;
      if (column.names) return html`<th scope="row"${classOf(column.set)}>${held}</th>`;
      return html`<td${classOf(column.set)}${held.markup !== '' && html` data-label="${column.head}"`}>${held}</td>`;
    });
  return html`<tr${idOf(id)}${classOf(set)}><th scope="${scope}"${span > 1 && html` colspan="${span}"`}>${words}</th>${figures}</tr>`;
}

const classOf = (names: string | undefined): Markup | false => names !== undefined && names !== '' && html` class="${names}"`;

const idOf = (id: string | null | undefined): Markup | false => typeof id === 'string' && html` id="${id}"`;
