import Fraction from 'fraction.js';
import type { IsoDate, Subsystem } from '../model.ts';
import { type Books, type Sum, sumBy, sumOf, viewAt } from './sums.ts';

/** How far a budget is used, in minutes or in minor units. */
export interface BudgetLine {
  readonly budget: number;
  readonly used: number;
  /** Negative when passed. */
  readonly left: number;
  /** used ÷ budget, exact; null for a budget of nothing. */
  readonly share: Fraction | null;
  readonly passed: boolean;
  readonly sum: Sum;
}

export interface BudgetRow {
  readonly subsystem: Subsystem;
  /** Null where there is no such budget. */
  readonly hours: BudgetLine | null;
  readonly money: BudgetLine | null;
  readonly worked: Sum;
  readonly spent: Sum;
}

/**
 * Budgets at a date, one row a subsystem, in declared order. Hours count whoever worked them, charged or
 * not. Money counts the job cost without labour, for labour has its budget in hours.
 */
export function budgets(books: Books, at: IsoDate | null): BudgetRow[] {
  const cost = viewAt(books, 'cost', at);
  const labour = sumBy(
    cost.filter((entry) => entry.kind === 'labour'),
    (entry) => entry.subsystem,
  );
  const other = sumBy(
    cost.filter((entry) => entry.kind !== 'labour'),
    (entry) => entry.subsystem,
  );
  return [...books.journal.subsystems.values()].map((subsystem) => {
    const worked = labour.get(subsystem.id) ?? sumOf([]);
    const spent = other.get(subsystem.id) ?? sumOf([]);
    return {
      subsystem,
      hours: line(subsystem.budgetMinutes, worked.minutes, worked),
      money: line(subsystem.budgetMoney, spent.gross, spent),
      worked,
      spent,
    };
  });
}

function line(budget: number | null, used: number, sum: Sum): BudgetLine | null {
  if (budget === null) return null;
  const share = budget === 0 ? null : new Fraction(used).div(budget);
  return { budget, used, left: budget - used, share, passed: used > budget, sum };
}
