import type Fraction from 'fraction.js';
import type { Worth } from './worth.ts';

/**
 * What is on the shelf of one consumable, and what it cost. Whatever goes in comes out or stays, in
 * quantity exactly and in money to the minor unit.
 */
export interface Costing {
  readonly amount: Fraction;
  readonly worth: Worth;
  /** Puts stock on the shelf. `purchase` is a name that it may be given back by. */
  add(amount: Fraction, worth: Worth, purchase?: string): void;
  /** Puts back what was taken by mistake, where it stood: it is the next to be taken again. */
  putBack(amount: Fraction, worth: Worth): void;
  /** Takes stock for use and returns what it cost. `amount` is no more than there is. */
  take(amount: Fraction): Worth;
  /**
   * Takes stock to give it back to the seller, for `refund`: the shelf is worth that much less, so that a
   * purchase and its refund come to nothing. It is of the purchase of that name as far as there is some of it left,
   * else of the newest. `amount` is no more than there is.
   *
   * @returns what left the shelf. It differs from the refund only where the rest of the shelf cannot bear
   * the difference: when nothing is left, or the rest would be worth less than nothing.
   */
  giveBack(amount: Fraction, refund: Worth, purchase?: string | null): Worth;
}
