/** Currencies by their ISO 4217 codes. */
import { nearest } from '../diagnostics/nearest.ts';
import { bad, ok, quoted, type Reading } from './reading.ts';

/**
 * Where ISO 4217 and the tables of `Intl` disagree: `Intl` gives the digits that are usual in
 * daily trade, ISO 4217 those a bill may carry. Source: ISO 4217 list one, as the npm package
 * `currency-codes` carries it; a test compares every code.
 */
const ISO_DIGITS: Readonly<Record<string, number>> = {
  AFN: 2,
  ALL: 2,
  COP: 2,
  HUF: 2,
  IDR: 2,
  IQD: 3,
  IRR: 2,
  KPW: 2,
  LAK: 2,
  LBP: 2,
  MGA: 2,
  MMK: 2,
  PKR: 2,
  SOS: 2,
  SYP: 2,
  YER: 2,
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
