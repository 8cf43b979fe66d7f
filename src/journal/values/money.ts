import { convert, type DineroCurrency, dinero, halfAwayFromZero, toDecimal, toSnapshot, transformScale } from 'dinero.js/bigint';
import Fraction from 'fraction.js';
import { currencyDigits, currencyOf, readCurrency } from './currency.ts';
import { LONGEST_NUMBER, type Minor, toSafe } from './decimal.ts';
import { bad, ok, quoted, type Reading } from './reading.ts';

export { currencyDigits, readCurrency } from './currency.ts';
export { roundHalfAway } from './decimal.ts';
export { shareOut } from './share-out.ts';

/** An amount in another currency, as on the bill. */
export interface Foreign {
  readonly currency: string;
  /** Minor units of that currency. */
  readonly amount: number;
  /** One unit of it in the journal's currency, as written. */
  readonly rate: string;
}

/** No single amount is larger, so that sums over any journal stay exact: 10^11 minor units. */
export const LARGEST_AMOUNT: Minor = 100_000_000_000;
const LARGEST = BigInt(LARGEST_AMOUNT);

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
  if (minor > LARGEST) return bad('A307', `${quoted(text)} is more than any bill.`);
  return ok(toSafe(sign === '-' ? -minor : minor));
}

function amountHint(written: string): string | null {
  const bare = written.replace(/^(-?)[^\d.,-]+/, '$1').replace(/[^\d.,]+$/, '');
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
  const minor = exchanged(foreign, digits);
  if (minor > LARGEST || minor < -LARGEST) return bad('A307', `${quoted(text)} is more than any bill.`);
  return ok({ minor: toSafe(minor), foreign });
}

/** A foreign amount in minor units of a currency with `digits` decimals, rounded half away from zero. */
function exchanged({ currency, amount, rate }: Foreign, digits: number): bigint {
  const own = inDigits(digits);
  const [whole = '', after = ''] = rate.trim().split('.');
  const rates = { [own.code]: { amount: BigInt(whole + after), scale: BigInt(after.length) } };
  const exact = convert(dinero({ amount: BigInt(amount), currency: currencyOf(currency) ?? inDigits(2) }), own, rates);
  return toSnapshot(transformScale(exact, own.exponent, halfAwayFromZero)).amount;
}

const ownCurrencies = new Map<number, DineroCurrency<bigint> & { readonly exponent: bigint }>();

/** The journal's own currency where all that matters of it is its decimals. */
function inDigits(digits: number) {
  const known = ownCurrencies.get(digits) ?? { code: 'own', base: 10n, exponent: BigInt(digits) };
  ownCurrencies.set(digits, known);
  return known;
}

/** How the journal writes money: its currency (ISO 4217), how many decimals that has, and whose way of writing. */
export interface MoneySettings {
  readonly currency: string;
  readonly currencyDigits: number;
  readonly locale: string;
}
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
  return toDecimal(dinero({ amount: BigInt(minor), currency: inDigits(digits) }));
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
