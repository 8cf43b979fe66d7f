/** Figures as phones and word processors write them, in the signs that a keyboard has. */

const DIGIT = /\p{Nd}/u;

/**
 * Text with plain digits, spaces, minus and per cent: digits of any script and width, every kind of space,
 * the minus of typography, full-width signs, and fractions that are one sign (`1½` to `1 1/2`).
 * What it means is the same before and after.
 */
export function asTyped(text: string): string {
  if (/^[ -~]*$/.test(text)) return text.trim();
  return text
    .replace(/[\u00bc-\u00be\u2150-\u215e]/g, (sign) => ` ${sign.normalize('NFKD').replace('\u2044', '/')}`)
    .replace(/\p{Nd}/gu, plainDigit)
    .replace(/[\uff01-\uff0f\uff1a-\uff20]/g, (sign) => sign.normalize('NFKC'))
    .replace(/[\u2010-\u2015\u2212\ufe63]/g, '-')
    .replace(/[\s\u200b\u2060\ufeff]+/g, ' ')
    .trim();
}

/**
 * A number with a point before its decimals, where a comma stands that can be nothing else: one, before one or two digits.
 * Before three it may stand between thousands, and is left as it is.
 */
export function withPoint(written: string): string {
  return written.replace(/^(-?\d+),(\d{1,2})(?![\d.,])/, '$1.$2');
}

const PRINTED = /^(?:[“„«]([^“”„«»]*)[”“»]|[‘‚]([^‘’‚]*)[’‘])$/;

/** Text without the quotation marks of print that stand around the whole of it, where those of a keyboard were meant. */
export function withoutPrintedMarks(text: string): string {
  return PRINTED.exec(text)?.slice(1).join('') ?? text;
}

/** A decimal digit of any script: they stand in rows of ten, from nought on (Unicode, general category Nd). */
function plainDigit(sign: string): string {
  const code = sign.codePointAt(0) ?? 0;
  let from = code;
  while (from > 0 && DIGIT.test(String.fromCodePoint(from - 1))) from -= 1;
  return String((code - from) % 10);
}
