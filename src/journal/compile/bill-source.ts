/** What a note says of a bill, and reading its amounts. */
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { BillLine, BoughtAs, ConsumableId, Place, Quantity, Settings, Tax } from '../model.ts';
import {
  type AtRate,
  currencyDigits,
  type Money,
  minorToDecimal,
  noMoney,
  readAtRate,
  readForeign,
  readMoney,
  roundHalfAway,
} from '../values/money.ts';
import type { Reading } from '../values/reading.ts';
import { readPercent, readTax, UNSAID } from '../values/tax.ts';

/** One line as the note has it: money is still text, references are resolved. */
export interface LineSource {
  readonly what: string;
  readonly as: BoughtAs;
  readonly consumable: ConsumableId | null;
  readonly amount: Quantity | null;
  /** Weights as written; they need not add up to 1. */
  readonly charges: BillLine['charges'];
  readonly cost: string;
  readonly tax: string | null;
  readonly refund: string | null;
  readonly refundOf: string | null;
  readonly notCharged: string | null;
  readonly deductible: 'yes' | 'no' | null;
}

/** A bill as the note has it. */
export interface BillSource {
  readonly from: string | null;
  readonly paper: string | null;
  /** `EUR at 0.8571` when all its amounts are in that currency. */
  readonly currency: string | null;
  readonly total: string | null;
  /** An amount, or a share of what the lines come to before it: `5%`. */
  readonly discount: string | null;
  readonly carriage: string | null;
  /** Of the amount to be paid, where the paper has such a line: `0.01`, `-0.02`. */
  readonly rounding: string | null;
  /** For carriage and discount, and for lines that say nothing of their own. */
  readonly tax: string | null;
  readonly lines: readonly LineSource[];
  /** Where a field of the bill, or of a line (counted from 0), is written; `''` is the whole. */
  placeOf(field: string, line?: number): Place;
}

/** A bill of which every amount is in one other currency at one rate is a bill in that currency. */
function onlyRate(amounts: readonly (Money | null)[]): AtRate | null {
  const there = amounts.filter((money) => money !== null && money !== NOTHING);
  const [first] = there;
  const same = there.every(
    (money) => money?.foreign?.currency === first?.foreign?.currency && money?.foreign?.rate === first?.foreign?.rate,
  );
  return same && first?.foreign ? { currency: first.foreign.currency, rate: first.foreign.rate } : null;
}

export type MoneySettings = Pick<Settings, 'currency' | 'currencyDigits' | 'locale'>;
/** No money. */
export const NOTHING: Money = { minor: 0, foreign: null };

/** A bill with every text read. */
export interface ReadBill {
  readonly atRate: AtRate | null;
  readonly lines: readonly { readonly cost: Money; readonly tax: Tax }[];
  readonly discount: Money;
  readonly carriage: Money;
  readonly rounding: Money;
  readonly total: Money | null;
  readonly tax: Tax;
}

/** Reads the texts of one bill, each at its place. Null when one of them could not be read. */
export function readBill(source: BillSource, settings: MoneySettings, diagnostics: Diagnostic[]): ReadBill | null {
  const before = diagnostics.length;
  const take = <T>(reading: Reading<T>, place: Place): T | null => {
    if (reading.ok) return reading.value;
    diagnostics.push(diagnostic(reading.code, place, reading.problem, { hint: reading.hint }));
    return null;
  };
  const { currency, currencyDigits: digits } = settings;
  const atRate =
    source.currency === null
      ? null
      : take(currency === null ? noMoney(source.currency) : readAtRate(source.currency, currency), source.placeOf('currency'));
  if (diagnostics.length > before) return null;
  const money = (text: string | null, field: string, line?: number): Money | null => {
    if (text === null) return null;
    return take(atRate ? readForeign(text, atRate, digits) : readMoney(text, currency, digits), source.placeOf(field, line));
  };
  const taxOf = (text: string | null, line?: number): Tax | null =>
    text === null ? null : take(readTax(text), source.placeOf('tax', line));
  const tax = taxOf(source.tax) ?? UNSAID;
  const lines = source.lines.map((line, i) => ({ cost: money(line.cost, 'cost', i) ?? NOTHING, tax: taxOf(line.tax, i) ?? tax }));
  const discount = money(discountAsAmount(source.discount, lines, atRate, digits), 'discount') ?? NOTHING;
  const carriage = money(source.carriage, 'carriage') ?? NOTHING;
  const rounding = money(source.rounding, 'rounding') ?? NOTHING;
  const total = money(source.total, 'total');
  if (diagnostics.length > before) return null;
  return {
    atRate: atRate ?? onlyRate([...lines.map(({ cost }) => cost), discount, carriage, rounding, total]),
    tax,
    lines,
    discount,
    carriage,
    rounding,
    total,
  };
}

/**
 * A discount that is said as a share of the lines, as an amount in the currency that they are in, rounded once, half away
 * from zero; as it stands where it is no share, or the lines are in several currencies.
 */
function discountAsAmount(text: string | null, lines: readonly { cost: Money }[], atRate: AtRate | null, own: number): string | null {
  const share = readPercent(text ?? '');
  if (!share.ok || (atRate === null && lines.some(({ cost }) => cost.foreign !== null))) return text;
  const costs = lines.reduce((sum, { cost }) => sum + (cost.foreign?.amount ?? cost.minor), 0);
  const digits = atRate === null ? own : (currencyDigits(atRate.currency) ?? own);
  return minorToDecimal(roundHalfAway(share.value.mul(costs)), digits);
}
