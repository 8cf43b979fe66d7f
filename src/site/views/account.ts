/** An account as the ledger sets it: one table a year, subsystem by month, with totals both ways. */
import { type MonthTable, subsystemByMonth } from '../../journal/ledger/by-month.ts';
import { type Sum, sumOf, type View } from '../../journal/ledger/sums.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { yearOf } from '../../journal/values/date.ts';
import type { Address } from '../addresses.ts';
import { bookAddress, sectionAddress } from './entry-books.ts';

export interface Cell {
  readonly sum: Sum;
  readonly to: Address;
}

/** A table of the account: the months of a year, or the years of the whole. */
export interface AccountTable {
  /** The year; null for the table of all years. */
  readonly year: string | null;
  /** `2025-03`, or `2025` in the table of all years. */
  readonly columns: readonly string[];
  readonly rows: readonly {
    readonly subsystem: string;
    readonly name: string;
    readonly cells: readonly (Cell | null)[];
    readonly total: Cell;
  }[];
  readonly totals: readonly (Cell | null)[];
  readonly total: Cell;
}

/** What a table shows of each sum. */
export type Measure = 'minutes' | 'gross';

/** A table a year, oldest first; of several years, one more that adds them up. */
export function accountByYear(record: JournalRecord, view: View, measure: Measure): readonly AccountTable[] {
  const table = subsystemByMonth(record, view, null);
  const years = Map.groupBy(table.months, yearOf);
  const addressOf = { cell: monthCell(record), whole: yearCell(record) };
  const tables = [...years].map(([year, months]) =>
    makeTable(
      table,
      year,
      months.map((month) => ({ name: month, months: [month] })),
      measure,
      addressOf,
    ),
  );
  if (years.size < 2) return tables;
  const columns = [...years].map(([year, months]) => ({ name: year, months }));
  return [...tables, makeTable(table, null, columns, measure, { cell: yearCell(record), whole: (slug) => bookAddress(slug) })];
}

interface Column {
  readonly name: string;
  readonly months: readonly string[];
}

/** Where the entries of a subsystem (or `all`) in a column, or in the whole table, are listed. */
interface Addresses {
  cell(slug: string, column: string): Address;
  whole(slug: string, year: string): Address;
}

const monthCell = (record: JournalRecord) => (slug: string, month: string) =>
  slug === 'all' ? bookAddress(`month-${month}`) : sectionAddress(record, slug, month);
const yearCell = (record: JournalRecord) => (slug: string, year: string) => sectionAddress(record, slug, `year-${year}`);

function makeTable(table: MonthTable, year: string | null, columns: readonly Column[], measure: Measure, to: Addresses): AccountTable {
  const cellOf = (sums: ReadonlyMap<string, Sum>, slug: string, { name, months }: Column): Cell | null => {
    const sum = together(sums, months);
    return sum[measure] === 0 ? null : { sum, to: to.cell(slug, name) };
  };
  const totalOf = (sums: ReadonlyMap<string, Sum>, slug: string): Cell => ({
    sum: together(
      sums,
      columns.flatMap(({ months }) => months),
    ),
    to: to.whole(slug, year ?? ''),
  });
  const rows = table.rows.map(({ subsystem, name, months }) => {
    const slug = `subsystem-${subsystem}`;
    return { subsystem, name, cells: columns.map((column) => cellOf(months, slug, column)), total: totalOf(months, slug) };
  });
  return {
    year,
    columns: columns.map(({ name }) => name),
    rows: rows.filter(({ cells }) => cells.some((cell) => cell !== null)),
    totals: columns.map((column) => cellOf(table.totals, 'all', column)),
    total: totalOf(table.totals, 'all'),
  };
}

function together(sums: ReadonlyMap<string, Sum>, months: readonly string[]): Sum {
  return sumOf(months.flatMap((month) => sums.get(month)?.entries ?? []));
}
