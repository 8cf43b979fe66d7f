import { convert, type DineroCurrency, dinero, halfAwayFromZero, toDecimal, toSnapshot, transformScale } from 'dinero.js/bigint';
import Fraction from 'fraction.js';
import { LARGEST_AMOUNT, readAmount, TOO_MUCH } from './amount.ts';
import { asTyped } from './as-typed.ts';
import { currencyDigits, currencyOf, readCurrency } from './currency.ts';
import { LONGEST_NUMBER, type Minor, toSafe } from './decimal.ts';
import { bad, ok, quoted, type Reading } from './reading.ts';

export { LARGEST_AMOUNT, readAmount } from './amount.ts';
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

const RATE_LIKE = 'Write what one of it was worth in the currency of the journal: `42.00 EUR at 0.8571`.';

/** Reads a rate of exchange, a decimal number more than zero. */
export function readRate(text: string): Reading<Fraction> {
  const written = asTyped(text);
  if (!/^\d+(\.\d+)?$/.test(written) || written.length > LONGEST_NUMBER) {
    return bad('A313', `${quoted(text)} is not a rate of exchange; it is a number, such as 0.8571.`, RATE_LIKE);
  }
  const rate = new Fraction(written);
  return rate.n === 0n ? bad('A313', 'The rate of exchange is zero; it must be more.', RATE_LIKE) : ok(rate);
}

/** A currency other than the journal's own, and what one unit of it was worth, as written. */
export interface AtRate {
  readonly currency: string;
  readonly rate: string;
}

/** Reads `EUR at 0.8571`: one EUR is worth 0.8571 of the journal's own currency, which may stand alone and gives null. */
export function readAtRate(text: string, own: string): Reading<AtRate | null> {
  return atRate(asTyped(text), own, '');
}

/** @param amount what stands before it, for the repair */
function atRate(written: string, own: string, amount: string): Reading<AtRate | null> {
  const [name, mark, rate] = partsOf(written);
  const currency = readCurrency(name);
  if (!currency.ok) return currency;
  const { code } = currency.value;
  if (code === own)
    return rate === undefined
      ? ok(null)
      : bad('A313', `${own} is the journal's own currency and takes no rate.`, `Write ${amount.trim() || 'the amount'} alone.`);
  if (rate === undefined) {
    return bad('A313', `${code} needs its rate: what one ${code} was worth in ${own}.`, `Write \`${amount}${code} at RATE\`.`);
  }
  const read = readRate(rate);
  if (!read.ok) return read;
  if (mark === '@') return bad('A313', 'A rate of exchange follows the word `at`.', `Write ${amount}${code} at ${rate}.`);
  return ok({ currency: code, rate });
}

/** The currency, the mark or word before the rate, and the rate, where there is one. */
function partsOf(written: string): [name: string, mark?: string, rate?: string] {
  const [, name = '', mark = '', rate = ''] = /^([^\s@]*)\s*(@|\bat\b)\s*(.*)$/.exec(written) ?? [];
  return mark === '' ? [written] : [name, mark, rate];
}

/** An amount in the journal's currency, and as the bill has it when that was in another one. */
export interface Money {
  readonly minor: Minor;
  readonly foreign: Foreign | null;
}

/**
 * Reads `12.50`, `12.50 GBP` or `42.00 EUR at 0.8571` (one EUR is 0.8571 of the journal's currency).
 * A foreign amount is rounded once, half away from zero.
 *
 * @param currency the journal's own, ISO 4217
 * @param digits its decimals
 */
export function readMoney(text: string, currency: string | null, digits: number): Reading<Money> {
  const read = readOwnOrForeign(text, currency ?? NO_CURRENCY, digits);
  return currency === null && read.ok && read.value.minor !== 0 ? noMoney(text) : read;
}

/** ISO 4217: a transaction in which no currency is involved. */
const NO_CURRENCY = 'XXX';

/** An amount in a journal that has no money. */
export function noMoney(text: string): Reading<never> {
  return bad(
    'A821',
    `${quoted(text)} is an amount, and the journal has no currency.`,
    'Say in journal.yaml which: `currency: EUR`, by its code.',
  );
}

/** Reads an amount in the journal's own currency; without one there is none but nought. */
export function readOwnAmount(
  text: string,
  { currency, currencyDigits }: Pick<MoneySettings, 'currency' | 'currencyDigits'>,
): Reading<Minor> {
  const read = readAmount(text, currencyDigits, currency);
  return currency === null && read.ok && read.value !== 0 ? noMoney(text) : read;
}

function readOwnOrForeign(text: string, currency: string, digits: number): Reading<Money> {
  const found = /^(\S+)\s+([A-Za-z]{2,4}(?:\s*@.*|\s+at\b.*)?)$/.exec(asTyped(text));
  const [, amount = '', rest = ''] = found ?? [];
  if (!found || !/\d/.test(amount)) return inOwn(text, currency, digits);
  const rated = atRate(rest, currency, `${amount} `);
  if (!rated.ok) return rated;
  return rated.value === null ? inOwn(amount, currency, digits) : readForeign(amount, rated.value, digits);
}

function inOwn(text: string, currency: string, digits: number): Reading<Money> {
  const minor = readAmount(text, digits, currency);
  return minor.ok ? ok({ minor: minor.value, foreign: null }) : minor;
}

/** Reads a bare amount of a bill in another currency. `digits` are those of the journal's currency. */
export function readForeign(text: string, { currency, rate }: AtRate, digits: number): Reading<Money> {
  const amount = readAmount(text, currencyDigits(currency) ?? 2, currency);
  if (!amount.ok) return amount;
  const foreign: Foreign = { currency, amount: amount.value, rate };
  const minor = exchanged(foreign, digits);
  if (minor > LARGEST_AMOUNT || minor < -LARGEST_AMOUNT) return bad('A307', `${quoted(text)} is more than any bill.`, TOO_MUCH);
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
  /** Null for a journal without money. */
  readonly currency: string | null;
  readonly currencyDigits: number;
  readonly locale: string;
}
const formats = new Map<string, Intl.NumberFormat>();

/** A minus as wide as a figure, for whoever reads; a hyphen, which is none, is for machines. */
export const MINUS = '\u2212';

/** An amount as the reader's locale writes it, with the sign of its currency: `£1,234.50`, `−£15.00`. */
export function formatMoney(minor: Minor, settings: MoneySettings): string {
  const { locale, currency, currencyDigits: digits } = settings;
  if (currency === null) return minorToDecimal(minor, digits).replace('-', MINUS);
  const key = `${locale} ${currency}`;
  let format = formats.get(key);
  if (!format) {
    const fixed = { minimumFractionDigits: digits, maximumFractionDigits: digits };
    format = new Intl.NumberFormat(locale, { style: 'currency', currency, ...fixed });
    formats.set(key, format);
  }
  return format.format(minorToDecimal(minor, digits) as `${number}`).replace('-', MINUS);
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
  const sign = minutes < 0 ? MINUS : '';
  if (hours === 0) return `${sign}${rest} min`;
  return rest === 0 ? `${sign}${hours} h` : `${sign}${hours} h ${rest} min`;
}
