import Fraction from 'fraction.js';
import type { Costing } from './costing.ts';
import { atLeastNothing, minus, NO_WORTH, partOf, plus, type Worth } from './worth.ts';

/**
 * Moving average, perpetual: after each purchase the shelf has one price, its worth ÷ its quantity.
 * An issue costs round(worth × amount ÷ quantity); what rounding leaves stays on the shelf, so the
 * last issue takes exactly the rest.
 *
 * Source of the method: OpenStax, Principles of Accounting, volume 1, section 10.3 (which rounds the
 * price itself to cents; here only the cost of an issue is rounded).
 */
export function averageCosting(): Costing {
  let amount = new Fraction(0);
  let worth = NO_WORTH;
  const leave = (taken: Fraction, rest: Worth): Worth => {
    const left = minus(worth, rest);
    amount = amount.sub(taken);
    worth = rest;
    return left;
  };
  return {
    get amount() {
      return amount;
    },
    get worth() {
      return worth;
    },
    add(more, cost) {
      amount = amount.add(more);
      worth = plus(worth, cost);
    },
    putBack(more, cost) {
      this.add(more, cost);
    },
    take(taken) {
      return taken.n === 0n ? NO_WORTH : leave(taken, minus(worth, partOf(worth, taken, amount)));
    },
    giveBack(taken, refund) {
      return leave(taken, taken.equals(amount) ? NO_WORTH : atLeastNothing(minus(worth, refund)));
    },
  };
}
