import type { IsoDate, Minor } from '../model.ts';
import { openingValueAt, shelfValueAt } from './stock-at.ts';
import { type Books, type Sum, sumOf, viewAt } from './sums.ts';

/** paid + labour + opening stock = job cost + shelf. Figures are gross. */
export interface Reconciliation {
  /** Money that went out, less what came in from sales and refunds. */
  readonly paid: Sum;
  /** Labour at its rate: it costs the job, and no bill was paid for it. */
  readonly labour: Sum;
  readonly opening: Minor;
  /** What the job cost, less what sales brought in. */
  readonly cost: Sum;
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
export function reconcile(books: Pick<Books, 'ledger'>, at: IsoDate | null): Reconciliation {
  const paid = sumOf(viewAt(books, 'paid', at));
  const cost = sumOf(viewAt(books, 'cost', at));
  const labour = sumOf(cost.entries.filter((entry) => entry.kind === 'labour'));
  const [opening, shelf] = [openingValueAt(books, at), shelfValueAt(books, at)];
  const left = paid.gross + labour.gross + opening;
  const right = cost.gross + shelf;
  return { paid, labour, opening, cost, shelf, left, right, holds: left === right };
}
