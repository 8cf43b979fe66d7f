/** Amounts of money as they are written, and what to type where one cannot be read. */
import { asTyped, withPoint } from './as-typed.ts';
import { codesOfSign, currencyDigits, signsOf } from './currency.ts';
import { LONGEST_NUMBER, type Minor, toSafe } from './decimal.ts';
import { bad, ok, quoted, type Reading } from './reading.ts';

/** No single amount is larger, so that sums over any journal stay exact: 10^11 minor units. */
export const LARGEST_AMOUNT: Minor = 100_000_000_000;
const LARGEST = BigInt(LARGEST_AMOUNT);

const PLAIN = /^(-?)(\d+)(?:\.(\d+))?$/;

/**
 * Reads a plain amount (`12.50`, `-3`) into minor units of a currency with `digits` decimals.
 * A comma for the decimal mark is read where it can be no other; thousands marks and currency signs are refused, never guessed at.
 *
 * @param currency the code of that currency, for the repair; null where the amount is in no known one
 */
export function readAmount(text: string, digits: number, currency: string | null = null): Reading<Minor> {
  const found = PLAIN.exec(withPoint(asTyped(text)));
  if (!found)
    return bad(
      'A307',
      `${quoted(text)} is not an amount: digits and a decimal point.`,
      amountHint(asTyped(text), digits, currency) ?? LIKE_THIS,
    );
  const [, sign, whole, after = ''] = found as unknown as [string, string, string, string?];
  if (after.length > digits)
    return bad('A307', `${quoted(text)} has more decimals than the currency, which has ${digits}.`, tooFine(digits));
  if (whole.length > LONGEST_NUMBER) return bad('A307', `${quoted(text)} is more than any bill.`, TOO_MUCH);
  const minor = BigInt(whole + after.padEnd(digits, '0'));
  if (minor > LARGEST) return bad('A307', `${quoted(text)} is more than any bill.`, TOO_MUCH);
  return ok(toSafe(sign === '-' ? -minor : minor));
}

const LIKE_THIS = 'Write digits, with a point before the decimals: `1234.50`.';
export const TOO_MUCH = 'Look for a decimal point that is missing.';

function tooFine(digits: number): string {
  return `Write it as the bill has it, ${digits === 0 ? 'in whole numbers' : `with ${digits} decimals at most`}. An amount before tax takes \`tax: RATE on top\`.`;
}

/** A number with the marks that people put into one: `1,200.50`, `1 200,50`, `.5`. */
const NUMBER = String.raw`\d[\d.,' ]*|[.,]\d+`;

/** In characters; whatever is longer is no slip in an amount. */
const LONGEST_SLIP = 200;

/** What to type instead, where it means the same; null where that cannot be known. */
function amountHint(written: string, digits: number, currency: string | null): string | null {
  if (written.length > LONGEST_SLIP) return null;
  const signs = currency === null ? [] : signsOf(currency);
  const withTax = /^(.*?\d)\s*\+\s*(\d+(?:\.\d+)?\s*%)?\s*\p{L}*$/u.exec(written);
  const net = withTax ? repaired(withTax[1] ?? '', digits, signs) : null;
  if (net !== null) return `Write ${net} and say the tax beside it: \`tax: ${withTax?.[2]?.replace(/\s/g, '') ?? 'RATE%'} on top\`.`;
  const [, before = ''] = /^(.*?\d\S*)\s+(?:inc|ex|plus).*$/i.exec(written) ?? [];
  const said = before === '' ? null : repaired(before, digits, signs);
  if (said !== null)
    return `Write ${said} and say the tax beside it: \`tax: 20%\` where it is inside, \`tax: 20% on top\` where it is not.`;
  const plain = repaired(written, digits, signs);
  if (plain !== null) return `Write ${plain}${whatWasWrong(written, signs)}.`;
  if (/^\d[\d.,]*\s*p$/.test(written) && currency === 'GBP') return inPence(written, digits);
  return otherCurrency(written);
}

/** An amount without marks, brackets and signs of its own currency, or null where its meaning is not plain. */
function repaired(written: string, digits: number, signs: readonly string[]): string | null {
  const bracketed = /^\((.*)\)$/.exec(written)?.[1];
  const [, before = '', rest = '', after = ''] = /^(-?)\s*(.*?)\s*(-?)$/.exec(bracketed ?? written) ?? [];
  const bare = withoutSign(rest, signs);
  const [, within = '', number = ''] = /^(-?)(.*)$/.exec(bare) ?? [];
  const minuses = [before, after, within].filter((one) => one !== '').length + (bracketed === undefined ? 0 : 1);
  const plain = minuses > 1 ? null : plainNumber(number.trim(), digits);
  return plain === null ? null : `${minuses === 1 ? '-' : ''}${plain}`;
}

function withoutSign(written: string, signs: readonly string[]): string {
  for (const sign of signs) {
    if (written.startsWith(sign)) return written.slice(sign.length).trim();
    if (written.endsWith(sign)) return written.slice(0, -sign.length).trim();
  }
  return written;
}

/** A number without marks between thousands and with a point before its decimals. */
function plainNumber(number: string, digits: number): string | null {
  const decimals = digits === 0 ? '' : `(?:[.,]\\d{1,${digits}})?`;
  if (PLAIN.test(number)) return number;
  if (digits > 0 && new RegExp(`^[.,]\\d{1,${digits}}$`).test(number)) return `0.${number.slice(1)}`;
  const grouped = new RegExp(`^(\\d{1,3}(?:([,.' ])\\d{3})(?:\\2\\d{3})*)(${decimals})$`).exec(number);
  if (grouped) {
    const [, whole = '', mark = '', after = ''] = grouped;
    // One mark before three digits may be either where the currency has three decimals.
    if (after === '' && digits === 3 && /[.,]/.test(mark) && whole.split(mark).length === 2) return null;
    return after.startsWith(mark) ? null : `${whole.replaceAll(mark, '')}${after.replace(',', '.')}`;
  }
  return digits > 0 && new RegExp(`^\\d+,\\d{1,${digits}}$`).test(number) ? number.replace(',', '.') : null;
}

function whatWasWrong(written: string, signs: readonly string[]): string {
  if (signs.some((sign) => written.includes(sign))) return ', without a sign of currency';
  if (/^\(|-$/.test(written)) return ', with the minus before it';
  if (/\d[,.' ]\d{3}/.test(written)) return ', without marks between thousands';
  return written.includes(',') ? ', with a decimal point' : '';
}

/** Pence as a price tag has them. */
function inPence(written: string, digits: number): string | null {
  const pence = /^(\d{1,6})\s*p$/.exec(written)?.[1];
  return pence === undefined ? null : `Write ${pence.padStart(digits + 1, '0').replace(/(\d{2})$/, '.$1')}: an amount is in pounds.`;
}

/** An amount with a sign or code of a currency that is not the journal's own. */
function otherCurrency(written: string): string | null {
  const found = new RegExp(`^(-?)(\\D*?)\\s*(-?)(${NUMBER})\\s*(\\D*)$`).exec(written);
  const [, minus = '', before = '', inner = '', number = '', after = ''] = found ?? [];
  const sign = before.trim() || after.trim();
  if (!found || sign === '' || (before.trim() !== '' && after.trim() !== '')) return null;
  const codes = currencyDigits(sign) === null ? codesOfSign(sign) : [sign];
  const plain = plainNumber(number.trim(), currencyDigits(codes[0] ?? '') ?? 2);
  if (plain === null || codes.length === 0) return null;
  if (codes.length > 1) return `Say which currency by its code, and what one of it was worth: \`${minus}${inner}${plain} CODE at RATE\`.`;
  return `Write \`${minus}${inner}${plain} ${codes[0]} at RATE\`: RATE is what one ${codes[0]} was worth.`;
}
