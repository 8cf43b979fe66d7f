/** The ledger now, and as it stood at the end of a past day. */
import { type BudgetRow, budgets } from '../../../journal/ledger/budgets.ts';
import { type LedgerAt, ledgerAt, ledgerSeries } from '../../../journal/ledger/ledger-at.ts';
import { type Reconciliation, reconcile } from '../../../journal/ledger/reconcile.ts';
import type { IsoDate } from '../../../journal/model.ts';
import type { SiteRecord } from '../../record.ts';
import { shownDates } from '../frame/shown-dates.ts';
import type { Sheet } from '../page/sheet.ts';

/** The books of a day: what they came to, the line on which the two views meet, and the budgets. */
export interface LedgerOfDay {
  readonly at: LedgerAt;
  readonly line: Reconciliation;
  readonly budgets: readonly BudgetRow[];
}

export function ledgerNow(sheet: Sheet): LedgerOfDay {
  return ledgerOfDay(sheet, ledgerAt(sheet.record, sheet.record.day));
}

export function ledgerOfDay({ record }: Sheet, at: LedgerAt): LedgerOfDay {
  return { at, line: reconcile(at), budgets: budgets(record.journal, at) };
}

/** A day on which the ledger is shown, with the days before and after it; null at the ends. */
export interface LedgerDay {
  readonly date: IsoDate;
  /** Names of what was reached that day. */
  readonly milestones: readonly string[];
  readonly before: IsoDate | null;
  readonly after: IsoDate | null;
  readonly at: LedgerAt;
}

/** Every day on which the ledger is shown, oldest first, worked out in one pass. */
export function ledgerDays(record: SiteRecord): LedgerDay[] {
  const dates = shownDates(record);
  const series = ledgerSeries(
    record,
    dates.map(({ date }) => date),
  );
  return dates.flatMap(({ date, milestones }, n) => {
    const at = series[n];
    const names = milestones.map(({ name }) => name);
    return at ? [{ date, milestones: names, before: dates[n - 1]?.date ?? null, after: dates[n + 1]?.date ?? null, at }] : [];
  });
}
