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

export interface YearAccount {
  readonly year: string;
  readonly months: readonly string[];
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

export function accountByYear(record: JournalRecord, view: View, measure: Measure): readonly YearAccount[] {
  const table = subsystemByMonth(record, view, null);
  const years = Map.groupBy(table.months, yearOf);
  return [...years].map(([year, months]) => yearAccount(record, table, year, months, measure));
}

function yearAccount(record: JournalRecord, table: MonthTable, year: string, months: readonly string[], measure: Measure): YearAccount {
  const cell = (sum: Sum | undefined, to: Address): Cell | null => (sum && sum[measure] !== 0 ? { sum, to } : null);
  const together = (sums: readonly (Sum | undefined)[]): Sum => sumOf(sums.flatMap((sum) => sum?.entries ?? []));
  const rows = table.rows.map((row) => {
    const slug = `subsystem-${row.subsystem}`;
    return {
      subsystem: row.subsystem,
      name: row.name,
      cells: months.map((month) => cell(row.months.get(month), sectionAddress(record, slug, month))),
      total: { sum: together(months.map((month) => row.months.get(month))), to: sectionAddress(record, slug, `year-${year}`) },
    };
  });
  return {
    year,
    months,
    rows: rows.filter(({ cells }) => cells.some((one) => one !== null)),
    totals: months.map((month) => cell(table.totals.get(month), bookAddress(`month-${month}`))),
    total: { sum: together(months.map((month) => table.totals.get(month))), to: sectionAddress(record, 'all', `year-${year}`) },
  };
}
