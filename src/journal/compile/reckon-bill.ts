/** The arithmetic of a bill, in whole minor units of whichever currency its amounts are in. */
import Fraction from 'fraction.js';
import type { Minor, Tax } from '../model.ts';
import { roundHalfAway, shareOut } from '../values/money.ts';
import { applyTax, insideOf, type Taxed } from '../values/tax.ts';

/** What a bill says, read. */
export interface BillFigures {
  readonly lines: readonly { readonly cost: Minor; readonly tax: Tax }[];
  /** As written: without tax where the bill's tax is on top. */
  readonly discount: Minor;
  readonly carriage: Minor;
  /** Of carriage and discount. */
  readonly tax: Tax;
}

/** What a bill comes to. `lines` hold their shares of discount and carriage. All gross. */
export interface Reckoned {
  readonly lines: readonly Taxed[];
  readonly linesBefore: Minor;
  readonly discount: Minor;
  readonly carriage: Minor;
  readonly total: Minor;
}

/** Where tax on top is rounded: on each line, or once for each rate. Sellers do either. */
export type TaxRounding = 'each-line' | 'each-rate';

/** Whether there are lines of some value over which discount and carriage can be shared. */
export function canShare({ lines, discount, carriage }: BillFigures): boolean {
  return (discount === 0 && carriage === 0) || lines.some((line) => line.cost > 0);
}

/**
 * Reckons a bill up. Discount and carriage are shared over the lines by value, largest remainder; the tax
 * of a line is then what is inside its share, at the line's own rate.
 */
export function reckonBill(figures: BillFigures, rounding: TaxRounding = 'each-line'): Reckoned {
  return (rounding === 'each-rate' ? byRate(figures) : null) ?? byLine(figures);
}

function byLine({ lines, discount, carriage, tax }: BillFigures): Reckoned {
  const before = lines.map((line) => applyTax(line.cost, line.tax));
  const values = before.map((line) => line.gross);
  const grossOff = applyTax(discount, tax).gross;
  const grossOn = applyTax(carriage, tax).gross;
  const [off, on] = [shareByValue(grossOff, values), shareByValue(grossOn, values)];
  const after = before.map((line, i) => {
    const change = (on[i] ?? 0) - (off[i] ?? 0);
    return change === 0 ? line : insideOf(line.gross + change, lines[i]?.tax.rate ?? new Fraction(0));
  });
  return reckoned(after, sum(values), grossOff, grossOn);
}

/**
 * The same with the tax of each rate rounded once, on the sum of what bears it, and shared over those
 * lines. Only for bills whose every amount is without tax; null for others.
 */
function byRate({ lines, discount, carriage, tax }: BillFigures): Reckoned | null {
  const extra = discount !== 0 || carriage !== 0;
  if (lines.some((line) => line.tax.on !== 'top' || line.cost < 0) || (extra && tax.on !== 'top')) return null;
  const costs = lines.map((line) => line.cost);
  const [off, on] = [shareByValue(discount, costs), shareByValue(carriage, costs)];
  const nets = costs.map((cost, i) => cost - (off[i] ?? 0) + (on[i] ?? 0));
  if (nets.some((net) => net < 0)) return null;
  const taxes = taxesByRate(
    nets,
    lines.map((line) => line.tax.rate ?? new Fraction(0)),
  );
  const after = nets.map((net, i) => ({ net, tax: taxes[i] ?? 0, gross: net + (taxes[i] ?? 0) }));
  const [grossOff, grossOn] = [applyTax(discount, tax).gross, applyTax(carriage, tax).gross];
  const total = sum(after.map((line) => line.gross));
  return reckoned(after, total + grossOff - grossOn, grossOff, grossOn);
}

function taxesByRate(nets: readonly Minor[], rates: readonly Fraction[]): Minor[] {
  const taxes = nets.map(() => 0);
  for (const key of new Set(rates.map((rate) => rate.toFraction()))) {
    const bearing = nets.map((net, i) => (rates[i]?.toFraction() === key ? net : 0));
    const shares = shareByValue(roundHalfAway(new Fraction(key).mul(sum(bearing))), bearing);
    shares.forEach((share, i) => {
      taxes[i] = (taxes[i] ?? 0) + share;
    });
  }
  return taxes;
}

function reckoned(lines: readonly Taxed[], linesBefore: Minor, discount: Minor, carriage: Minor): Reckoned {
  return { lines, linesBefore, discount, carriage, total: sum(lines.map((line) => line.gross)) };
}

/** Shares by value; what came back (negative) takes no share. Nothing is shared as nothing. */
function shareByValue(total: Minor, values: readonly Minor[]): Minor[] {
  if (total === 0) return values.map(() => 0);
  return shareOut(
    total,
    values.map((value) => new Fraction(Math.max(value, 0))),
  );
}

function sum(values: readonly Minor[]): Minor {
  return values.reduce((all, value) => all + value, 0);
}
