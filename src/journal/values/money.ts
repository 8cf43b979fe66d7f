import Fraction from 'fraction.js';
import type { Foreign, Minor, Settings } from '../model.ts';
import { LONGEST_NUMBER, roundHalfAway, toSafe } from './decimal.ts';
import { nearest } from '../diagnostics/nearest.ts';
import { bad, ok, quoted, type Reading } from './reading.ts';

export { roundHalfAway } from './decimal.ts';

/**
 * Where ISO 4217 and the tables of `Intl` disagree: `Intl` gives the digits that are usual in
 * daily trade, ISO 4217 those a bill may carry. Source: ISO 4217 list one, as the npm package
 * `currency-codes` carries it; a test compares every code.
 */
const ISO_DIGITS: Readonly<Record<string, number>> = {
  AFN: 2, ALL: 2, COP: 2, HUF: 2, IDR: 2, IQD: 3, IRR: 2, KPW: 2, LAK: 2,
  LBP: 2, MGA: 2, MMK: 2, PKR: 2, SOS: 2, SYP: 2, YER: 2,
};

let known: ReadonlySet<string> | null = null;
function currencies(): ReadonlySet<string> {
  known ??= new Set(Intl.supportedValuesOf('currency'));
  return known;
}

const digitsOf = new Map<string, number | null>();

/** Digits after the decimal mark of an ISO 4217 currency (upper case), or null when there is none of that code. */
export function currencyDigits(code: string): number | null {
  const cached = digitsOf.get(code);
  if (cached !== undefined) return cached;
  const digits = currencies().has(code) ? (ISO_DIGITS[code] ?? intlDigits(code)) : null;
  digitsOf.set(code, digits);
  return digits;
}

function intlDigits(code: string): number {
  return new Intl.NumberFormat('en', { style: 'currency', currency: code }).resolvedOptions().maximumFractionDigits ?? 2;
}

/** Reads an ISO 4217 code, such as `GBP`. */
export function readCurrency(text: string): Reading<{ readonly code: string; readonly digits: number }> {
  const code = text.trim();
  const digits = currencyDigits(code);
  if (digits !== null) return ok({ code, digits });
  const near = currencyDigits(code.toUpperCase()) === null ? nearest(code, currencies()) : code.toUpperCase();
  return bad('A312', `${quoted(text)} is not an ISO 4217 currency.`, near && `Did you mean ${near}?`);
}

/** No single amount is larger, so that sums over any journal stay exact: 10^11 minor units. */
export const LARGEST_AMOUNT: Minor = 100_000_000_000;

/**
 * Reads a plain amount (`12.50`, `-3`) into minor units of a currency with `digits` decimals.
 * Thousands marks, currency signs and a comma for the decimal mark are refused, never guessed at.
 */
export function readAmount(text: string, digits: number): Reading<Minor> {
  const written = text.trim();
  const found = /^(-?)(\d+)(?:\.(\d+))?$/.exec(written);
  if (!found) return bad('A307', `${quoted(text)} is not an amount: digits and a decimal point.`, amountHint(written));
  const [, sign, whole, after = ''] = found as unknown as [string, string, string, string?];
  if (after.length > digits) return bad('A307', `${quoted(text)} has more decimals than the currency, which has ${digits}.`);
  if (whole.length > LONGEST_NUMBER) return bad('A307', `${quoted(text)} is more than any bill.`);
  const minor = BigInt(whole + after.padEnd(digits, '0'));
  if (minor > BigInt(LARGEST_AMOUNT)) return bad('A307', `${quoted(text)} is more than any bill.`);
  return ok(toSafe(sign === '-' ? -minor : minor));
}

function amountHint(written: string): string | null {
  const bare = written.replace(/[^\d.,-]/g, '');
  if (/^-?\d{1,3}(,\d{3})+(\.\d+)?$/.test(bare)) return `Write ${bare.replaceAll(',', '')}, without marks between thousands.`;
  if (/^-?\d+,\d+$/.test(bare)) return `Write ${bare.replace(',', '.')}, with a decimal point.`;
  if (/^-?\.\d+$/.test(bare)) return `Write ${bare.replace('.', '0.')}.`;
  if (/^-?\d+(\.\d+)?$/.test(bare) && bare !== written) return `Write ${bare}, without a sign of currency.`;
  return null;
}

/** Reads a rate of exchange, a decimal number more than zero. */
export function readRate(text: string): Reading<Fraction> {
  const written = text.trim();
  if (!/^\d+(\.\d+)?$/.test(written) || written.length > LONGEST_NUMBER) {
    return bad('A313', `${quoted(text)} is not a rate of exchange; it is a number, such as 0.8571.`);
  }
  const rate = new Fraction(written);
  return rate.n === 0n ? bad('A313', 'The rate of exchange is zero; it must be more.') : ok(rate);
}

/** A currency other than the journal's own, and what one unit of it was worth, as written. */
export interface AtRate {
  readonly currency: string;
  readonly rate: string;
}

/** Reads `EUR @ 0.8571`. The journal's own currency may stand alone and gives null. */
export function readAtRate(text: string, own: string): Reading<AtRate | null> {
  const [name = '', rate] = text.split('@', 2).map((piece) => piece.trim());
  const currency = readCurrency(name);
  if (!currency.ok) return currency;
  const { code } = currency.value;
  if (code === own) return rate === undefined ? ok(null) : bad('A313', `${own} is the journal's own currency and takes no rate.`);
  if (rate === undefined) {
    return bad('A313', `${code} needs its rate: what one ${code} was worth in ${own}.`, `Write ${code} @ RATE.`);
  }
  const read = readRate(rate);
  return read.ok ? ok({ currency: code, rate }) : read;
}

/** An amount in the journal's currency, and as the bill has it when that was in another one. */
export interface Money {
  readonly minor: Minor;
  readonly foreign: Foreign | null;
}

/**
 * Reads `12.50`, `12.50 GBP` or `42.00 EUR @ 0.8571` (one EUR is 0.8571 of the journal's currency).
 * A foreign amount is rounded once, half away from zero.
 *
 * @param currency the journal's own, ISO 4217
 * @param digits its decimals
 */
export function readMoney(text: string, currency: string, digits: number): Reading<Money> {
  const found = /^(\S+)\s+([A-Za-z]{2,4}(?:\s*@.*)?)$/.exec(text.trim());
  if (!found) return inOwn(text, digits);
  const [, amount, rest] = found as unknown as [string, string, string];
  const atRate = readAtRate(rest, currency);
  if (!atRate.ok) return atRate;
  return atRate.value === null ? inOwn(amount, digits) : readForeign(amount, atRate.value, digits);
}

function inOwn(text: string, digits: number): Reading<Money> {
  const minor = readAmount(text, digits);
  return minor.ok ? ok({ minor: minor.value, foreign: null }) : minor;
}

/** Reads a bare amount of a bill in another currency. `digits` are those of the journal's currency. */
export function readForeign(text: string, { currency, rate }: AtRate, digits: number): Reading<Money> {
  const amount = readAmount(text, currencyDigits(currency) ?? 2);
  if (!amount.ok) return amount;
  const foreign: Foreign = { currency, amount: amount.value, rate };
  const exact = exchanged(foreign, digits);
  if (exact.abs().gt(LARGEST_AMOUNT)) return bad('A307', `${quoted(text)} is more than any bill.`);
  return ok({ minor: roundHalfAway(exact), foreign });
}

/** A foreign amount in minor units of the journal's currency, exact: not yet rounded. */
export function exchanged(foreign: Foreign, digits: number): Fraction {
  const ofForeign = 10n ** BigInt(currencyDigits(foreign.currency) ?? 2);
  return new Fraction(foreign.rate).mul(BigInt(foreign.amount)).mul(10n ** BigInt(digits), ofForeign);
}

/**
 * Shares an amount out in proportion to weights by largest remainder: every share is its exact part
 * rounded down, and the units still missing go one each to the largest remainders, the earlier of
 * two equal ones first. Shares add up to `total`; those of -total are the negatives.
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

type MoneySettings = Pick<Settings, 'locale' | 'currency' | 'currencyDigits'>;
const formats = new Map<string, Intl.NumberFormat>();

/** An amount as the reader's locale writes it, with the sign of its currency: `£1,234.50`. */
export function formatMoney(minor: Minor, settings: MoneySettings): string {
  const { locale, currency, currencyDigits: digits } = settings;
  const key = `${locale} ${currency}`;
  let format = formats.get(key);
  if (!format) {
    const fixed = { minimumFractionDigits: digits, maximumFractionDigits: digits };
    format = new Intl.NumberFormat(locale, { style: 'currency', currency, ...fixed });
    formats.set(key, format);
  }
  return format.format(minorToDecimal(minor, digits) as `${number}`);
}

/** An amount as a plain decimal, `-1234.50`: for tables that machines read. */
export function minorToDecimal(minor: Minor, digits: number): string {
  const text = Math.abs(minor).toString().padStart(digits + 1, '0');
  const sign = minor < 0 ? '-' : '';
  return digits === 0 ? `${sign}${text}` : `${sign}${text.slice(0, -digits)}.${text.slice(-digits)}`;
}

/** Minutes in words a timesheet uses: `12 h 30 min`, `2 h`, `45 min`. */
export function formatMinutes(minutes: number): string {
  const whole = Math.abs(minutes);
  const hours = Math.floor(whole / 60);
  const rest = whole % 60;
  const sign = minutes < 0 ? '-' : '';
  if (hours === 0) return `${sign}${rest} min`;
  return rest === 0 ? `${sign}${hours} h` : `${sign}${hours} h ${rest} min`;
}
