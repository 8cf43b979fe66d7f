/** The arithmetic of a bill, in whole minor units of whichever currency its amounts are in. */
import Fraction from 'fraction.js';
import type { BillWay } from '../model.ts';
import type { Minor } from '../values/decimal.ts';
import { shareOut } from '../values/share-out.ts';
import { asPart, mergeParts, sumTaxed, type Tax, type Taxed, type TaxPart, turned, UNSAID } from '../values/tax.ts';
import { type Amount, TAX_WAYS, type TaxWay, taxed } from '../values/tax-ways.ts';

/** What a bill says, read. */
export interface BillFigures {
  readonly lines: readonly Amount[];
  /** As written: without tax where the bill's tax is on top. */
  readonly discount: Minor;
  readonly carriage: Minor;
  /** Of carriage and discount. */
  readonly tax: Tax;
  /** As the paper has it: added to what the rest makes; no tax is in it. */
  readonly rounding: Minor;
}

/** A line with its shares of discount and carriage, and how its money stands to tax. */
export interface ReckonedLine extends Taxed {
  readonly parts: readonly TaxPart[];
}

/** What a bill comes to. All gross. */
export interface Reckoned {
  readonly lines: readonly ReckonedLine[];
  readonly linesBefore: Minor;
  readonly discount: Minor;
  readonly carriage: Minor;
  /** What the lines leave over: the rounding on the paper, and of tax that is not reckoned on each line, the difference at each rate. */
  readonly rounding: readonly TaxPart[];
  /** To be paid: lines and rounding. */
  readonly total: Minor;
}

/** As a bill is reckoned that has no total to tell otherwise. */
export const USUAL_WAY: BillWay = { tax: 'line', sharedFirst: false };

/** Every way, the usual one first. */
export const BILL_WAYS: readonly BillWay[] = [false, true].flatMap((sharedFirst) => TAX_WAYS.map((tax) => ({ tax, sharedFirst })));

/** Whether there are lines of some value over which discount and carriage can be shared. */
export function canShare({ lines, discount, carriage }: BillFigures): boolean {
  return (discount === 0 && carriage === 0) || lines.some((line) => line.cost > 0);
}

/**
 * Reckons a bill up. Discount and carriage carry the tax said of them, and nothing else's; only then are they shared
 * over the lines, net and tax, by value and largest remainder. The tax of each line is its own, rounded once; what a seller who
 * reckons otherwise comes to beyond that, and a rounding on the paper, are no line's and are told apart.
 *
 * Source: EN 16931-1, rule BR-CO-16: the amount due for payment (BT-115) is the total with tax, less what was paid before,
 * and the rounding amount (BT-114), which is in no category of tax.
 */
export function reckonBill(figures: BillFigures, way: BillWay = USUAL_WAY): Reckoned {
  const reckoned = way.sharedFirst ? sharedBeforeTax : sharedAfterTax;
  const byLine = reckoned(figures, 'line');
  const rounding = [...(way.tax === 'line' ? [] : beyond(byLine.lines, reckoned(figures, way.tax).lines)), ...onPaper(figures.rounding)];
  return { ...byLine, rounding, total: byLine.total + sumTaxed(rounding).gross };
}

/** What lines reckoned another way come to beyond these, at each rate. */
function beyond(lines: readonly ReckonedLine[], others: readonly ReckonedLine[]): TaxPart[] {
  const parts = [...others.flatMap((line) => line.parts), ...lines.flatMap((line) => line.parts).map(turned)];
  return mergeParts(parts).filter(({ net, tax }) => net !== 0 || tax !== 0);
}

const onPaper = (rounding: Minor): TaxPart[] => (rounding === 0 ? [] : [asPart({ net: rounding, tax: 0, gross: rounding }, UNSAID)]);

type ByLines = Omit<Reckoned, 'rounding'>;

function sharedAfterTax({ lines, discount, carriage, tax }: BillFigures, way: TaxWay): ByLines {
  const all = taxed([...lines, { cost: -discount || 0, tax }, { cost: carriage, tax }], way);
  const before = all.slice(0, lines.length);
  const [off, on] = all.slice(lines.length) as [Taxed, Taxed];
  const values = before.map((line) => line.gross);
  const [offs, ons] = [shared(off, values), shared(on, values)];
  const after = before.map((line, i) =>
    lineOf([asPart(line, lines[i]?.tax ?? UNSAID), asPart(offs[i] ?? NOTHING, tax), asPart(ons[i] ?? NOTHING, tax)]),
  );
  return {
    lines: after,
    linesBefore: sum(values),
    discount: -off.gross || 0,
    carriage: on.gross,
    total: sum(after.map(({ gross }) => gross)),
  };
}

function sharedBeforeTax({ lines, discount, carriage, tax }: BillFigures, way: TaxWay): ByLines {
  const costs = lines.map(({ cost }) => cost);
  const [offs, ons] = [shareByValue(discount, costs), shareByValue(carriage, costs)];
  const amounts = lines.map((line, i) => ({ ...line, cost: line.cost - (offs[i] ?? 0) + (ons[i] ?? 0) }));
  const after = taxed(amounts, way).map((line, i) => lineOf([asPart(line, lines[i]?.tax ?? UNSAID)]));
  const total = sum(after.map(({ gross }) => gross));
  const [off, on] = taxed(
    [discount, carriage].map((cost) => ({ cost, tax })),
    'line',
  ) as [Taxed, Taxed];
  return { lines: after, linesBefore: total + off.gross - on.gross, discount: off.gross, carriage: on.gross, total };
}

const NOTHING: Taxed = { net: 0, tax: 0, gross: 0 };

/** A line from what stands to tax in several ways; nothing is no part of it, unless it is all there is. */
function lineOf([own, ...more]: readonly TaxPart[]): ReckonedLine {
  const parts = mergeParts([...(own ? [own] : []), ...more.filter(({ gross }) => gross !== 0)]);
  return { ...sumTaxed(parts), parts };
}

/** Money shared over lines of some value: the gross by value, the tax by those shares. */
function shared(money: Taxed, values: readonly Minor[]): Taxed[] {
  if (money.gross < 0) return shared(turned(money), values).map(turned);
  const gross = shareByValue(money.gross, values);
  const taxes =
    money.tax === 0
      ? gross.map(() => 0)
      : shareOut(
          money.tax,
          gross.map((share) => new Fraction(share)),
        );
  return gross.map((share, i) => ({ net: share - (taxes[i] ?? 0), tax: taxes[i] ?? 0, gross: share }));
}

/** Shares by value; what came back (negative) takes no share. Nothing is shared as nothing. */
function shareByValue(total: Minor, values: readonly Minor[]): Minor[] {
  if (total === 0 || values.every((value) => value <= 0)) return values.map(() => 0);
  return shareOut(
    total,
    values.map((value) => new Fraction(Math.max(value, 0))),
  );
}

function sum(values: readonly Minor[]): Minor {
  return values.reduce((all, value) => all + value, 0);
}
