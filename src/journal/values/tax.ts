import Fraction from 'fraction.js';
import { asTyped } from './as-typed.ts';
import { LONGEST_NUMBER, type Minor, roundHalfAway } from './decimal.ts';
import { bad, ok, quoted, type Reading } from './reading.ts';

/** How tax stands to the cost as written. */
export interface Tax {
  /** Exact fraction: 20 % is 1/5. Null when exempt or not said. */
  readonly rate: Fraction | null;
  readonly on: 'inside' | 'top' | 'exempt' | 'unsaid';
}

/** Tax that a line does not speak of. */
export const UNSAID: Tax = { rate: null, on: 'unsaid' };

/** Reads `20%` or `17.5 %` into an exact fraction: 20 % is 1/5. */
export function readPercent(text: string): Reading<Fraction> {
  const written = asTyped(text);
  const found = /^(-?\d+(?:\.\d+)?)\s*%$/.exec(written);
  if (!found?.[1] || found[1].length > LONGEST_NUMBER) {
    return bad('A316', `${quoted(text)} is not a percentage; it is written 20%.`, percentHint(written));
  }
  return ok(new Fraction(found[1]).div(100));
}

/** A number from 1 was meant in per cent; one below may be a share of one as well. */
function percentHint(written: string): string | null {
  if (!/^\d+(\.\d+)?$/.test(written)) return null;
  return Number(written) >= 1 ? `Write ${written}%.` : 'Write it in hundredths, with the sign: a fifth is 20%.';
}

/** Reads `20%` (inside the cost), `20% on top` (the cost is net) or `exempt`. */
export function readTax(text: string): Reading<Tax> {
  const written = asTyped(text);
  if (written === 'exempt') return ok({ rate: null, on: 'exempt' });
  const onTop = /\s+on\s+top$/.exec(written);
  const rate = readPercent(onTop ? written.slice(0, onTop.index) : written);
  if (!rate.ok) return bad('A316', `${quoted(text)} is not a tax; it is 20%, 20% on top, or exempt.`, rate.hint);
  if (rate.value.s < 0n || rate.value.gt(1)) return bad('A314', `Tax is from 0 to 100 %, not ${quoted(text)}.`);
  return ok({ rate: rate.value, on: onTop ? 'top' : 'inside' });
}

/** What was paid, without tax, and the tax: gross = net + tax, always. */
export interface Taxed {
  readonly net: Minor;
  readonly tax: Minor;
  readonly gross: Minor;
}

/**
 * Parts a cost as written into net and tax. The tax is what is rounded, half away from zero; the
 * other figure follows by adding or taking away, so that gross = net + tax holds exactly.
 */
export function applyTax(cost: Minor, tax: Tax): Taxed {
  if (tax.rate === null) return { net: cost, tax: 0, gross: cost };
  return tax.on === 'top' ? onTopOf(cost, tax.rate) : insideOf(cost, tax.rate);
}

function onTopOf(net: Minor, rate: Fraction): Taxed {
  const tax = roundHalfAway(rate.mul(net));
  return { net, tax, gross: net + tax };
}

/** The tax inside a gross amount: gross × rate ÷ (1 + rate). */
export function insideOf(gross: Minor, rate: Fraction): Taxed {
  const tax = roundHalfAway(rate.mul(gross).div(rate.add(1)));
  return { net: gross - tax, tax, gross };
}
