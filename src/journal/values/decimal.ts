import Fraction from 'fraction.js';

/** Minor units of the journal's currency (pence, cents), always a safe integer. */
export type Minor = number;

/** Longer numbers than this stand in no note; they are refused before any arithmetic. */
export const LONGEST_NUMBER = 30;

/**
 * Rounds to a whole number, halves away from zero: 2.5 to 3, -2.5 to -3.
 *
 * @throws RangeError when the result is not a safe integer. Readers keep amounts far below that.
 */
export function roundHalfAway(exact: Fraction): number {
  const magnitude = (2n * exact.n + exact.d) / (2n * exact.d);
  return toSafe(exact.s < 0n ? -magnitude : magnitude);
}

/** A bigint as a number, never -0. */
export function toSafe(whole: bigint): number {
  const value = Number(whole);
  if (!Number.isSafeInteger(value)) throw new RangeError(`${whole} is beyond exact whole numbers`);
  return value;
}

/**
 * An exact number in decimal, rounded (halves away from zero) only when it does not end within
 * `places`. Trailing zeros are left off unless `fixed`.
 */
export function toDecimal(exact: Fraction, places: number, fixed = false): string {
  const scaled = (2n * exact.n * 10n ** BigInt(places) + exact.d) / (2n * exact.d);
  const digits = scaled.toString().padStart(places + 1, '0');
  const whole = digits.slice(0, digits.length - places);
  const after = digits.slice(digits.length - places);
  const shown = fixed ? after : after.replace(/0+$/, '');
  const sign = exact.s < 0n && scaled !== 0n ? '-' : '';
  return `${sign}${whole}${shown === '' ? '' : `.${shown}`}`;
}

/** The sum of exact numbers. */
export function sumExact(values: Iterable<Fraction>): Fraction {
  let sum = new Fraction(0);
  for (const value of values) sum = sum.add(value);
  return sum;
}
