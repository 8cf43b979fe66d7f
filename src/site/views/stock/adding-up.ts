/** Quantities as they are shown, to three places, so that what stands in a column or a row adds up. */
import Fraction from 'fraction.js';
import type { StockRow } from '../../../journal/ledger/stock-at.ts';
import type { StockMovement } from '../../../journal/record.ts';
import { roundHalfAway } from '../../../journal/values/decimal.ts';

/** A quantity in thousandths of its unit. */
function shown(exact: Fraction): Fraction {
  return new Fraction(roundHalfAway(exact.mul(1000)), 1000);
}

/** Opening and bought are used and left: used is told by the others. */
export function shownHoldings({ opening, bought, left }: StockRow): Record<'opening' | 'bought' | 'used' | 'left', Fraction> {
  const [begun, got, rest] = [shown(opening.amount), shown(bought.amount), shown(left.amount)];
  return { opening: begun, bought: got, used: begun.add(got).sub(rest), left: rest };
}

/** Each movement is the difference of what was left before and after it. */
export function shownMovements(movements: readonly StockMovement[]): { readonly amount: Fraction; readonly left: Fraction }[] {
  let before = new Fraction(0);
  return movements.map((movement) => {
    const left = shown(movement.left.amount);
    const amount = left.sub(before);
    before = left;
    return { amount, left };
  });
}
