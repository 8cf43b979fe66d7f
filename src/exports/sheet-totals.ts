/** Sums under the rows of a sheet. */
import Fraction from 'fraction.js';
import type { Cell as SheetCell } from 'write-excel-file/universal';
import { sumExact } from '../journal/values/decimal.ts';
import type { Cell, Decimal, Table, Total } from './table.ts';

/**
 * A total as the cells of a row: its words first, and a formula under each column it sums.
 *
 * @param formatFor how a number like it is shown
 */
export function totalRow({ words, of, where }: Total, { columns, rows }: Table, formatFor: (like: Decimal) => string): SheetCell[] {
  const last = rows.length + 1;
  const rangeOf = (column: string): string => {
    const letter = letterOf(columns.indexOf(column));
    return `${letter}2:${letter}${last}`;
  };
  const formula = (column: string): string =>
    where ? `SUMIF(${rangeOf(where[0])},"${where[1]}",${rangeOf(column)})` : `SUBTOTAL(109,${rangeOf(column)})`;
  return columns.map((column, at): SheetCell => {
    if (at === 0) return { value: words, type: String, fontWeight: 'bold' };
    if (!of.includes(column) || rows.length === 0) return null;
    const like = rows.map((row) => row[at] ?? null).find((cell) => typeof cell === 'object' && cell !== null && 'decimal' in cell);
    const format = like && typeof like === 'object' && 'decimal' in like ? { format: formatFor(like) } : {};
    return { value: formula(column), type: 'Formula', fontWeight: 'bold', ...format };
  });
}

/** What a total comes to, for programs that show a formula without reckoning it. */
function sumOf({ where }: Total, column: string, { columns, rows }: Table): string {
  const [at, by] = [columns.indexOf(column), columns.indexOf(where?.[0] ?? '')];
  const counted = where ? rows.filter((row) => row[by] === where[1]) : rows;
  const numbers = counted.map((row) => new Fraction(numberIn(row[at] ?? null)));
  return sumExact(numbers).toString(12);
}

function numberIn(cell: Cell): string | number {
  if (typeof cell === 'number') return cell;
  return typeof cell === 'object' && cell !== null && 'decimal' in cell ? cell.decimal : 0;
}

/** The sums of a table by the address of their cells. */
export function sumsAt(table: Table): ReadonlyMap<string, string> {
  const { columns, rows, totals = [] } = table;
  const cells = totals.flatMap((total, n) =>
    total.of.map((column): [string, string] => [`${letterOf(columns.indexOf(column))}${rows.length + 2 + n}`, sumOf(total, column, table)]),
  );
  return new Map(cells);
}

/** `A` of the first column, `AA` of the twenty-seventh. */
export function letterOf(column: number): string {
  const last = String.fromCharCode(65 + (column % 26));
  return column < 26 ? last : letterOf(Math.floor(column / 26) - 1) + last;
}
