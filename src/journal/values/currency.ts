/** Currencies by their ISO 4217 codes. */
import type { DineroCurrency } from 'dinero.js/bigint';
import * as listed from 'dinero.js/bigint/currencies';
import { nearest } from '../diagnostics/nearest.ts';
import { bad, ok, quoted, type Reading } from './reading.ts';

/** In tens, as bills are made out: of the two currencies that have five parts ISO 4217 too gives two decimals. */
const TENS = { base: 10n, exponent: 2n } as const;

type Currency = DineroCurrency<bigint>;

const current = new Map<string, Currency>(
  Object.values(listed).map((one): [string, Currency] => [one.code, one.base === 10n ? one : { code: one.code, ...TENS }]),
);

/** Currencies that the list no longer has, and old bills are in, as far as `Intl` knows them. */
let withdrawn: ReadonlyMap<string, Currency> | null = null;
function withdrawnCurrencies(): ReadonlyMap<string, Currency> {
  const gone = (): string[] => Intl.supportedValuesOf('currency').filter((code) => !current.has(code));
  withdrawn ??= new Map(gone().map((code): [string, Currency] => [code, ofIntl(code)]));
  return withdrawn;
}

function ofIntl(code: string): Currency {
  const digits = new Intl.NumberFormat('en', { style: 'currency', currency: code }).resolvedOptions().maximumFractionDigits ?? 2;
  return { code, base: 10n, exponent: BigInt(digits) };
}

/** A currency as the money library takes it, or null when there is none of that code (upper case). */
export function currencyOf(code: string): Currency | null {
  return current.get(code) ?? withdrawnCurrencies().get(code) ?? null;
}

/** Digits after the decimal mark of an ISO 4217 currency (upper case), or null when there is none of that code. */
export function currencyDigits(code: string): number | null {
  const found = currencyOf(code);
  return found === null ? null : Number(found.exponent);
}

/** Reads an ISO 4217 code, such as `GBP`. */
export function readCurrency(text: string): Reading<{ readonly code: string; readonly digits: number }> {
  const code = text.trim();
  const digits = currencyDigits(code);
  if (digits !== null) return ok({ code, digits });
  const near = currencyDigits(code.toUpperCase()) === null ? nearest(code, current.keys()) : code.toUpperCase();
  return bad(
    'A312',
    `${quoted(text)} is not an ISO 4217 currency.`,
    near === null ? 'A code is three letters: GBP, EUR, USD.' : `Did you mean ${near}?`,
  );
}

/** The signs that stand for a currency beside an amount, longest first: its code, and what `Intl` writes for it. */
export function signsOf(code: string): readonly string[] {
  const known = signs.get(code);
  if (known) return known;
  const written = (['symbol', 'narrowSymbol'] as const).map((currencyDisplay) => signIn(code, currencyDisplay));
  const all = [...new Set([code, ...written])].filter((sign) => sign !== '').sort((a, b) => b.length - a.length);
  signs.set(code, all);
  return all;
}

const signs = new Map<string, readonly string[]>();

function signIn(code: string, currencyDisplay: 'symbol' | 'narrowSymbol'): string {
  const format = new Intl.NumberFormat('en', { style: 'currency', currency: code, currencyDisplay });
  return (
    format
      .formatToParts(1)
      .find((part) => part.type === 'currency')
      ?.value.trim() ?? ''
  );
}

/** The currencies that a sign such as `€`, `$` or `kr` may stand for. */
export function codesOfSign(sign: string): readonly string[] {
  return [...current.keys()].filter((code) => signsOf(code).includes(sign));
}
