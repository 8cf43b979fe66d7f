/** The ways in which sellers reckon the tax of a bill, as tax offices allow them. */
import Fraction from 'fraction.js';
import { type Minor, roundHalfAway } from './decimal.ts';
import { apportion } from './share-out.ts';
import { exactTax, type Tax, type Taxed, withTax } from './tax.ts';

/**
 * How tax is reckoned: on each line, or once for each rate; rounded, half away from zero, or cut. On each line it may
 * also be kept to the half penny, or cut to the tenth of one, and the sum of all lines then cut to the penny.
 *
 * Sources: HMRC, VAT guide (VAT Notice 700), paragraph 17.5, as told in its internal manual VATREC12010 (the total may be
 * rounded down to a whole penny; a line down to 0.1p or to the nearer 1p or 0.5p) and VATREC12030 (half a penny goes up).
 * EN 16931-1, rule BR-CO-17: the tax of a category is its taxable amount × rate, rounded to two decimals. Streamlined
 * Sales and Use Tax Agreement, section 324: to the third decimal and rounded, by item or by invoice as the seller elects.
 */
export const TAX_WAYS = ['line', 'rate', 'line-cut', 'rate-cut', 'line-half', 'line-tenth'] as const;
export type TaxWay = (typeof TAX_WAYS)[number];

/** An amount of a bill with what is said of its tax. */
export interface Amount {
  /** As written: without tax where that is on top. Negative for what is taken off. */
  readonly cost: Minor;
  readonly tax: Tax;
}

/** The amounts with their tax, reckoned one way. */
export function taxed(amounts: readonly Amount[], way: TaxWay): Taxed[] {
  const exact = amounts.map(({ cost, tax }) => exactTax(cost, tax));
  const taxes = TAXES[way](exact, amounts);
  return amounts.map(({ cost, tax }, i) => withTax(cost, tax, taxes[i] ?? 0));
}

const TAXES: Readonly<Record<TaxWay, (exact: readonly Fraction[], amounts: readonly Amount[]) => Minor[]>> = {
  line: (exact) => exact.map(roundHalfAway),
  'line-cut': (exact) => exact.map(cut),
  rate: (exact, amounts) => byRate(exact, amounts, roundHalfAway),
  'rate-cut': (exact, amounts) => byRate(exact, amounts, cut),
  'line-half': (exact) => together(exact.map((tax) => new Fraction(roundHalfAway(tax.mul(2)), 2))),
  'line-tenth': (exact) => together(exact.map((tax) => new Fraction(cut(tax.mul(10)), 10))),
};

/** A whole number without what is behind the point. */
function cut(exact: Fraction): Minor {
  return Number((exact.s * exact.n) / exact.d);
}

function together(taxes: readonly Fraction[]): Minor[] {
  return apportion(cut(sum(taxes)), taxes);
}

function byRate(exact: readonly Fraction[], amounts: readonly Amount[], whole: (exact: Fraction) => Minor): Minor[] {
  const groups = Map.groupBy(amounts.keys(), (i) => `${amounts[i]?.tax.rate?.toFraction() ?? ''} ${amounts[i]?.tax.on}`);
  const taxes = amounts.map(() => 0);
  for (const group of groups.values()) {
    const parts = group.map((i) => exact[i] as Fraction);
    const shares = apportion(whole(sum(parts)), parts);
    group.forEach((i, at) => {
      taxes[i] = shares[at] ?? 0;
    });
  }
  return taxes;
}

function sum(all: readonly Fraction[]): Fraction {
  return all.reduce((so, one) => so.add(one), new Fraction(0));
}
