import type { Minor } from '../model.ts';
import type { LedgerAt } from './ledger-at.ts';

/** paid + labour + opening stock = job cost + shelf. Figures are gross. */
export interface Reconciliation {
  /** Money that went out, less what came in from sales and refunds. */
  readonly paid: Minor;
  /** Labour at its rate: it costs the job, and no bill was paid for it. */
  readonly labour: Minor;
  readonly opening: Minor;
  /** What the job cost, less what sales brought in. */
  readonly cost: Minor;
  /** Consumables still on the shelf. */
  readonly shelf: Minor;
  readonly left: Minor;
  readonly right: Minor;
  readonly holds: boolean;
}

/**
 * The line on which the two views meet at a date. A sale counts in both, negative: it is set against
 * what was paid and against the cost of the job, so the line holds with or without sales.
 */
export function reconcile({ whole, shelf: shelves }: Pick<LedgerAt, 'whole' | 'shelf'>): Reconciliation {
  const { paid, cost } = whole;
  const labour = cost - whole.costWithoutLabour;
  const opening = shelves.reduce((sum, one) => sum + one.opening, 0);
  const shelf = shelves.reduce((sum, one) => sum + one.left.value, 0);
  const [left, right] = [paid + labour + opening, cost + shelf];
  return { paid, labour, opening, cost, shelf, left, right, holds: left === right };
}
