import Fraction from 'fraction.js';
import type { Minor } from './decimal.ts';

/**
 * Shares an amount out in proportion to weights by largest remainder: every share is its exact part
 * rounded down, and the units still missing go one each to the largest remainders, the earlier of
 * two equal ones first. Shares add up to `total`; those of -total are the negatives. (The money library gives the
 * missing units to the first shares, whatever their remainders.)
 *
 * @throws RangeError when the weights add up to nothing or one is negative
 */
export function shareOut(total: Minor, weights: readonly Fraction[]): Minor[] {
  const sum = weights.reduce((all, weight) => all.add(weight), new Fraction(0));
  if (sum.n === 0n || weights.some((weight) => weight.s < 0n)) throw new RangeError('weights must add up to something');
  const exact = weights.map((weight) => weight.mul(Math.abs(total)).div(sum));
  const shares = exact.map((share) => Number(share.n / share.d));
  let missing = Math.abs(total) - shares.reduce((all, share) => all + share, 0);
  for (const index of byRemainder(exact)) {
    if (missing-- <= 0) break;
    shares[index] = (shares[index] ?? 0) + 1;
  }
  return total < 0 ? shares.map((share) => (share === 0 ? 0 : -share)) : shares;
}

function byRemainder(exact: readonly Fraction[]): number[] {
  const remainders = exact.map((share) => new Fraction(share.n % share.d, share.d));
  return exact.map((_, index) => index).sort((a, b) => remainders[b]?.compare(remainders[a] ?? 0) || a - b);
}
