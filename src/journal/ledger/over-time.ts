import type { IsoDate, Journal, Minor } from '../model.ts';
import type { Entry } from '../record.ts';
import { addDays, mondayOf, monthsFrom, weekOf } from '../values/date.ts';
import { byMonth } from './by-month.ts';
import { type LedgerSource, type Sum, sumBy, sumOf, viewAt } from './sums.ts';

export interface Week {
  /** ISO 8601, `2031-W11`. */
  readonly week: string;
  readonly monday: IsoDate;
  readonly sum: Sum;
}

/** Labour by ISO week, from the first week worked to the last, weeks without work included. */
export function hoursByWeek(books: Pick<LedgerSource, 'ledger'>, at: IsoDate | null): Week[] {
  const worked = viewAt(books, 'cost', at).filter((entry) => entry.kind === 'labour');
  const mondays = new Map<IsoDate, IsoDate>();
  const mondayOnce = (date: IsoDate): IsoDate => {
    const monday = mondays.get(date) ?? mondayOf(date);
    mondays.set(date, monday);
    return monday;
  };
  const sums = sumBy(worked, (entry) => mondayOnce(entry.date));
  const [first, last] = [worked[0], worked.at(-1)];
  if (!first || !last) return [];
  const weeks: Week[] = [];
  for (let monday = mondayOnce(first.date); monday <= last.date; monday = addDays(monday, 7)) {
    weeks.push({ week: weekOf(monday), monday, sum: sums.get(monday) ?? sumOf([]) });
  }
  return weeks;
}

/** What counts against the money budgets in a month, and together up to its end. Gross. */
export interface MonthSpend {
  /** `YYYY-MM` */
  readonly month: string;
  readonly added: Minor;
  readonly together: Minor;
}

/** Spend against the sum of the money budgets. */
export interface BudgetedSpend {
  readonly budget: Minor;
  /** From the first with such a cost to the last, months without one included. */
  readonly months: readonly MonthSpend[];
}

/** Whether an entry counts against a budget in money: job cost without labour, of a subsystem that has one. */
export function isBudgeted({ subsystems }: Pick<Journal, 'subsystems'>, { cost, kind, subsystem }: Entry): boolean {
  return cost && kind !== 'labour' && (subsystems.get(subsystem)?.budgetMoney ?? null) !== null;
}

/** The figures the money budgets count, added up month by month. Null without a budget or without anything against it. */
export function budgetedSpend({ journal, ledger }: LedgerSource): BudgetedSpend | null {
  const budget = [...journal.subsystems.values()].reduce((sum, one) => sum + (one.budgetMoney ?? 0), 0);
  const entries = ledger.entries.filter((entry) => isBudgeted(journal, entry));
  const [first, last] = [entries[0], entries.at(-1)];
  if (!first || !last) return null;
  const sums = byMonth(entries);
  let together = 0;
  const months = monthsFrom(first.date, last.date).map((month) => {
    const added = sums.get(month)?.gross ?? 0;
    together += added;
    return { month, added, together };
  });
  return { budget, months };
}
