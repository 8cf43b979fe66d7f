/** The ledger now, and as it stood at the end of a past day. */
import { type BudgetRow, budgets } from '../../../journal/ledger/budgets.ts';
import { type LedgerAt, ledgerAt, ledgerSeries } from '../../../journal/ledger/ledger-at.ts';
import { type Reconciliation, reconcile } from '../../../journal/ledger/reconcile.ts';
import type { IsoDate } from '../../../journal/model.ts';
import { once } from '../../../journal/values/once.ts';
import type { AnyQuestion } from '../../kept/question.ts';
import { shownThen } from '../../kept/shown-then.ts';
import type { SiteRecord } from '../../record.ts';
import { shownDates } from '../frame/shown-dates.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';

/** The books of a day: what they came to, the line on which the two views meet, and the budgets. */
export interface LedgerOfDay {
  readonly at: LedgerAt;
  readonly line: Reconciliation;
  readonly budgets: readonly BudgetRow[];
}

export function ledgerNow(sheet: RecordSheet): LedgerOfDay {
  return ledgerOfDay(sheet, ledgerAt(sheet.record, sheet.record.day));
}

export function ledgerOfDay({ record }: RecordSheet, at: LedgerAt): LedgerOfDay {
  return { at, line: reconcile(at), budgets: budgets(record.journal, at) };
}

const THEN = shownThen('ledger then', (sheet, date: IsoDate) =>
  ledgerOfDay(sheet, byDay(sheet.record).get(date) ?? ledgerAt(sheet.record, date)),
);

export const LEDGER_QUESTIONS: readonly AnyQuestion[] = [THEN];

/** The books as they stood at the end of a shown day. */
export const ledgerThen = (sheet: Sheet, date: IsoDate): LedgerOfDay => sheet.ask(THEN, date);

/** Worked out for all shown days in one pass. */
const byDay = once((record: SiteRecord) => new Map(ledgerDays(record).map(({ date, at }) => [date, at])));

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
