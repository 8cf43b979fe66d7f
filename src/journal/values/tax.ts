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
    return bad('A316', `${quoted(text)} is not a percentage; it is written 20%.`, percentHint(written) ?? 'Write it like `20%`.');
  }
  return ok(new Fraction(found[1]).div(100));
}

/** A number from 1 was meant in per cent; one below may be a share of one as well. */
function percentHint(written: string): string | null {
  if (!/^\d+(\.\d+)?$/.test(written)) return null;
  return Number(written) >= 1 ? `Write ${written}%.` : 'Write it in hundredths, with the sign: a fifth is 20%.';
}

/** More than this on top of what a thing cost is a slip of the pen. */
const MOST_MARK_UP = 10;

/** Reads a mark-up, `12.5%`, from 0 to 1000 %. */
export function readMarkUp(text: string): Reading<Fraction> {
  const share = readPercent(text);
  if (!share.ok || (share.value.s >= 0n && share.value.lte(MOST_MARK_UP))) return share;
  return bad('A814', `Mark-up is from 0 to 1000 %, not ${quoted(text)}.`, 'Write what is added to the net cost: `10%`.');
}

/** Reads `20%` (inside the cost), `20% on top` (the cost is net) or `exempt`. */
export function readTax(text: string): Reading<Tax> {
  const written = asTyped(text);
  if (written === 'exempt') return ok({ rate: null, on: 'exempt' });
  const onTop = /\s+on\s+top$/.exec(written);
  const rate = readPercent(onTop ? written.slice(0, onTop.index) : written);
  if (!rate.ok)
    return bad(
      'A316',
      `${quoted(text)} is not a tax; it is 20%, 20% on top, or exempt.`,
      percentHint(written) ?? 'Write `20%` where the cost holds the tax, `20% on top` where it does not, or `exempt`.',
    );
  if (rate.value.s < 0n || rate.value.gt(1))
    return bad('A314', `Tax is from 0 to 100 %, not ${quoted(text)}.`, 'Write the rate that stands on the bill: `20%`.');
  return ok({ rate: rate.value, on: onTop ? 'top' : 'inside' });
}

/** How money stands to tax: at a rate, of which 0 % is one; exempt; not said; or bought at several, as stock may be. */
export const TAX_STANDINGS = ['rated', 'exempt', 'several', 'unsaid'] as const;
export type TaxStanding = (typeof TAX_STANDINGS)[number];

/** Money that stands to tax in one way. */
export interface TaxPart extends Taxed {
  readonly standing: TaxStanding;
  /** Exact fraction; null unless rated. */
  readonly rate: Fraction | null;
}

/** Money as it stands to the tax said of it. */
export function asPart(money: Taxed, { rate, on }: Tax): TaxPart {
  const { net, tax, gross } = money;
  return { net, tax, gross, rate, standing: on === 'exempt' || on === 'unsaid' ? on : 'rated' };
}

/** One word for how a part stands to tax, equal for parts that may be added up. */
export function standingKey({ standing, rate }: Pick<TaxPart, 'standing' | 'rate'>): string {
  return rate === null ? standing : rate.toFraction();
}

/** Parts added up by how they stand to tax, in the order in which they first come. */
export function mergeParts(parts: readonly TaxPart[]): TaxPart[] {
  const merged = new Map<string, TaxPart>();
  for (const part of parts) {
    const key = standingKey(part);
    const known = merged.get(key);
    merged.set(key, known ? { ...part, ...sumTaxed([known, part]) } : part);
  }
  return [...merged.values()];
}

/** The sum of what was taxed. */
export function sumTaxed(all: readonly Taxed[]): Taxed {
  let [net, tax] = [0, 0];
  for (const one of all) {
    net += one.net;
    tax += one.tax;
  }
  return { net, tax, gross: net + tax };
}

/** The same money going the other way. */
export function turned<T extends Taxed>(money: T): T {
  const back = (minor: Minor): Minor => (minor === 0 ? 0 : -minor);
  return { ...money, net: back(money.net), tax: back(money.tax), gross: back(money.gross) };
}

/** The tax in or on a cost, before it is rounded. */
export function exactTax(cost: Minor, { rate, on }: Tax): Fraction {
  if (rate === null) return new Fraction(0);
  return on === 'top' ? rate.mul(cost) : rate.mul(cost).div(rate.add(1));
}

/** A cost with so much tax in or on it. */
export function withTax(cost: Minor, { on }: Tax, tax: Minor): Taxed {
  return on === 'top' ? { net: cost, tax, gross: cost + tax } : { net: cost - tax, tax, gross: cost };
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
  return withTax(cost, tax, roundHalfAway(exactTax(cost, tax)));
}
