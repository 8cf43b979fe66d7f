import Fraction from 'fraction.js';
import type { Journal, Subsystem } from '../model.ts';
import type { LedgerAt } from './ledger-at.ts';
import { NO_TOTALS } from './totals.ts';

/** How far a budget is used, in minutes or in minor units. */
export interface BudgetLine {
  readonly budget: number;
  readonly used: number;
  /** Negative when passed. */
  readonly left: number;
  /** used ÷ budget, exact; null for a budget of nothing. */
  readonly share: Fraction | null;
  readonly passed: boolean;
}

export interface BudgetRow {
  readonly subsystem: Subsystem;
  /** Null where there is no such budget. */
  readonly hours: BudgetLine | null;
  readonly money: BudgetLine | null;
  /** Minutes. */
  readonly worked: number;
  /** Minor units. */
  readonly spent: number;
}

/**
 * Budgets at a date, one row a subsystem, in declared order. Hours count whoever worked them, charged or
 * not. Money counts the job cost without labour, for labour has its budget in hours.
 */
export function budgets({ subsystems }: Pick<Journal, 'subsystems'>, { bySubsystem }: Pick<LedgerAt, 'bySubsystem'>): BudgetRow[] {
  return [...subsystems.values()].map((subsystem) => {
    const { minutes: worked, costWithoutLabour: spent } = bySubsystem.get(subsystem.id) ?? NO_TOTALS;
    const { budgetMinutes, budgetMoney } = subsystem;
    return { subsystem, hours: lineOf(budgetMinutes, worked), money: lineOf(budgetMoney, spent), worked, spent };
  });
}

/** The budgets of all subsystems that have one, and what is used of those, as one line; null where none has one. */
export function budgetsTogether(rows: readonly BudgetRow[], of: 'hours' | 'money'): BudgetLine | null {
  const lines = rows.flatMap((row) => row[of] ?? []);
  if (lines.length === 0) return null;
  const sum = (figure: 'budget' | 'used'): number => lines.reduce((all, line) => all + line[figure], 0);
  return lineOf(sum('budget'), sum('used'));
}

function lineOf(budget: number | null, used: number): BudgetLine | null {
  if (budget === null) return null;
  const share = budget === 0 ? null : new Fraction(used).div(budget);
  return { budget, used, left: budget - used, share, passed: used > budget };
}
