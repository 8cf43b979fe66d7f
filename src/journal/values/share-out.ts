import Fraction from 'fraction.js';
import type { Minor } from './decimal.ts';

/**
 * Shares an amount out in proportion to weights by largest remainder (`apportion`). Shares add up to `total`; those of
 * -total are the negatives. (The money library gives the missing units to the first shares, whatever their remainders.)
 *
 * @throws RangeError when the weights add up to nothing or one is negative
 */
export function shareOut(total: Minor, weights: readonly Fraction[]): Minor[] {
  const sum = weights.reduce((all, weight) => all.add(weight), new Fraction(0));
  if (sum.n === 0n || weights.some((weight) => weight.s < 0n)) throw new RangeError('weights must add up to something');
  return apportion(
    total,
    weights.map((weight) => weight.mul(total).div(sum)),
  );
}

/**
 * Whole numbers that stand for exact ones and add up to a total that is about theirs: every one is its exact part
 * without what is behind the point, and the units still missing go one each to the largest remainders, the earlier
 * of two equal ones first. Exact parts may be of either sign.
 */
export function apportion(total: Minor, exact: readonly Fraction[]): Minor[] {
  const shares = exact.map((part) => Number((part.s * part.n) / part.d));
  const missing = total - shares.reduce((all, share) => all + share, 0);
  const unit = Math.sign(missing);
  const order = byRemainder(exact.map((part) => part.mul(unit)));
  for (let given = 0; given < Math.abs(missing); given += 1) {
    const index = order[given % order.length] ?? 0;
    shares[index] = (shares[index] ?? 0) + unit;
  }
  return shares.map((share) => (share === 0 ? 0 : share));
}

function byRemainder(exact: readonly Fraction[]): number[] {
  const remainders = exact.map((part) => new Fraction(part.s * (part.n % part.d), part.d));
  return exact.map((_, index) => index).sort((a, b) => remainders[b]?.compare(remainders[a] ?? 0) || a - b);
}
