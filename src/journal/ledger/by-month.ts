import type { IsoDate, SubsystemId } from '../model.ts';
import { GENERAL } from '../model.ts';
import type { Entry } from '../record.ts';
import { monthOf, monthsFrom } from '../values/date.ts';
import { type LedgerSource, type Sum, sumBy, sumOf, type View, viewAt } from './sums.ts';

/** One subsystem's row: a figure for each month that has one. */
export interface MonthRow {
  readonly subsystem: SubsystemId;
  readonly name: string;
  readonly months: ReadonlyMap<string, Sum>;
  readonly total: Sum;
}

/** Subsystem by month, with totals both ways. */
export interface MonthTable {
  /** `YYYY-MM`, from the first with an entry to the last, none left out. */
  readonly months: readonly string[];
  readonly rows: readonly MonthRow[];
  readonly totals: ReadonlyMap<string, Sum>;
  readonly total: Sum;
}

/** The table of one view at a date. Every declared subsystem has a row; `general` has one when it has an entry. */
export function subsystemByMonth(books: LedgerSource, view: View, at: IsoDate | null): MonthTable {
  const entries = viewAt(books, view, at);
  const bySubsystem = sumBy(entries, (entry) => entry.subsystem);
  const [first, last] = [entries[0], entries.at(-1)];
  return {
    months: first && last ? monthsFrom(first.date, last.date) : [],
    rows: rowsOf(books, bySubsystem),
    totals: byMonth(entries),
    total: sumOf(entries),
  };
}

function rowsOf({ journal }: LedgerSource, sums: ReadonlyMap<SubsystemId, Sum>): MonthRow[] {
  const shown = [...journal.subsystems.values()].filter(({ id }) => id !== GENERAL || sums.has(id));
  return shown.map(({ id, name }) => {
    const total = sums.get(id) ?? sumOf([]);
    return { subsystem: id, name, months: byMonth(total.entries), total };
  });
}

/** Sums by month, `YYYY-MM`. */
export function byMonth(entries: readonly Entry[]): Map<string, Sum> {
  return sumBy(entries, (entry) => monthOf(entry.date));
}
