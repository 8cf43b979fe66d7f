import Fraction from 'fraction.js';
import { asTyped, withPoint } from './as-typed.ts';
import { LONGEST_NUMBER, toDecimal } from './decimal.ts';
import { bad, ok, quoted, type Reading } from './reading.ts';
import { comparable, type Dimension, imperialOrUs, UNITS, type Unit, unitMeant } from './units.ts';

export { UNITS } from './units.ts';

/** A quantity as written and in the exact base unit of its dimension. */
export interface Quantity {
  /** As the note says it: `9.043 in`. */
  readonly text: string;
  readonly value: Fraction;
  readonly unit: string;
  readonly dimension: Dimension;
  /** In the coherent base unit of the dimension (m, m2, L, kg, N.m, Pa, K …), exact. */
  readonly base: Fraction;
}

const NUMBER = /^(-?)(?:(\d+)(?:\s+|-)(?=\d+\/))?(\d+)(?:\.(\d+)|\/(\d+))?/;

/**
 * Reads a number and a unit: `9.043 in`, `300 ml`, `1 1/2 in`, `5/16 in`; a bare number counts things.
 * Fractions and decimals are exact; the decimal mark may be a comma where it can be nothing else.
 */
export function readQuantity(text: string): Reading<Quantity> {
  const written = withPoint(asTyped(text));
  const angle = readAngle(written);
  if (angle !== null) return angle;
  const number = readNumber(written);
  if (number === null) {
    return bad('A308', `${quoted(text)} is not a quantity: a number and a unit.`, 'Write it like `300 ml`, `9.043 in` or `5/16 in`.');
  }
  const name = written.slice(number.length).trim();
  const unit = UNITS.get(name === '' ? 'each' : name);
  if (!unit) return bad('A308', `${quoted(name)} is not a unit known here.`, unitHint(name, written.slice(0, number.length)));
  return ok(quantityOf(text.trim(), number.value, unit));
}

function quantityOf(text: string, value: Fraction, unit: Unit): Quantity {
  return { text, value, unit: unit.symbol, dimension: unit.dimension, base: value.mul(unit.factor).add(unit.zero) };
}

/** An angle in degrees and minutes, `1° 30′` or `1 deg 30 arcmin`. */
function readAngle(written: string): Reading<Quantity> | null {
  const found = /^(-?)(\d{1,3}) ?(?:°|deg) ?(\d{1,2}) ?(?:′|'|arcmin)$/.exec(written);
  const [, sign = '', degrees = '0', minutes = '0'] = found ?? [];
  const unit = UNITS.get('deg');
  if (!found || !unit) return null;
  if (Number(minutes) > 59)
    return bad(
      'A308',
      `${quoted(written)} has ${minutes} minutes; a degree holds 60.`,
      'Write no more than 59 minutes beside the degrees.',
    );
  const size = new Fraction(degrees).add(new Fraction(Number(minutes), 60));
  return ok(quantityOf(written, sign === '-' ? size.neg() : size, unit));
}

/** @param number that stands before it, where one does */
function unitHint(name: string, number = ''): string {
  if (/^-?\s*\d/.test(name)) return 'Write one number: `5`, `3/8` or `5 3/8`.';
  if (/^[,.]\d/.test(name)) return 'A number has one decimal point, and no comma.';
  const either = imperialOrUs(name);
  if (either) return `Say which: ${either[0]} or ${either[1]}.`;
  const near = unitMeant(name);
  const counted = /^\d+$/.test(number) ? ` What is counted in pieces has no unit: \`${number}\`.` : '';
  return near ? `Did you mean \`${near}\`?${counted}` : 'Units are such as mm, in, ml, L, imp-gal, g, kg, lb, N.m, lbf.ft, psi, each.';
}

function readNumber(written: string): { value: Fraction; length: number } | null {
  const found = NUMBER.exec(written);
  if (!found || found[0].length > LONGEST_NUMBER) return null;
  const [all, sign = '', whole, main = '0', decimals, divisor] = found;
  if (divisor !== undefined && /^0+$/.test(divisor)) return null;
  if (whole !== undefined && divisor === undefined) return null;
  const part = divisor === undefined ? new Fraction(decimals ? `${main}.${decimals}` : main) : new Fraction(`${main}/${divisor}`);
  const value = whole === undefined ? part : part.add(new Fraction(whole));
  return { value: sign === '-' ? value.neg() : value, length: all.length };
}

/** A quantity parted before its unit: `['5 3/8', 'in']`. Where no number begins it, the first is empty. */
export function upToUnit(written: string): readonly [number: string, unit: string] {
  const length = readNumber(withPoint(written))?.length ?? 0;
  return [written.slice(0, length), written.slice(length).trim()];
}

/** A quantity's number in another unit, exact; A309 when the unit measures something else. */
export function convertTo(quantity: Quantity, unit: string): Reading<Fraction> {
  const from = UNITS.get(quantity.unit);
  const to = UNITS.get(unit);
  if (!from || !to) return bad('A308', `${quoted(unit)} is not a unit known here.`, unitHint(unit));
  if (!comparable(from, to)) return bad('A309', wrongDimension(quantity.text, from, to), inItsUnit(quantity.text, to));
  return ok(quantity.base.sub(to.zero).div(to.factor));
}

function inItsUnit(text: string, to: Unit): string {
  if (unitless(text)) return withUnit(text, to);
  return to.symbol === 'each' ? 'Write how many, without a unit.' : `Write it in ${to.symbol}, or in another unit of ${nameOf(to)}.`;
}

/** A thousandth of a unit, in which people write what would be much of it. */
const SMALLER: Readonly<Record<string, string>> = { L: 'ml', kg: 'g', m: 'mm' };
/** So many litres, kilograms or metres nobody uses of an evening. */
const MUCH = 20;

function withUnit(text: string, { symbol }: Unit): string {
  const smaller = Number(text) >= MUCH ? SMALLER[symbol] : undefined;
  if (smaller === undefined) return `Write its unit: \`${text} ${symbol}\`.`;
  return `Write its unit: \`${text} ${smaller}\`, or \`${text} ${symbol}\` if it is that much.`;
}

function wrongDimension(text: string, from: Unit, to: Unit): string {
  if (unitless(text)) return `${quoted(text)} has no unit; ${nameOf(to)} was expected (${to.symbol}).`;
  const expected = to.symbol === 'each' ? 'a number without a unit' : `${nameOf(to)} (${to.symbol})`;
  return `${quoted(text)} measures ${nameOf(from)}; ${expected} was expected.`;
}

function unitless(text: string): boolean {
  return /\p{Nd}$/u.test(text);
}

function nameOf(unit: Unit): string {
  return unit.dimension === 'electric' || unit.dimension === 'other' ? `number of ${unit.base}` : unit.dimension;
}

/** A number of a unit for reading: at most `places` decimals, no trailing zeros; `each` is left unsaid. */
export function formatQuantity(value: Fraction, unit: string, places = 3): string {
  const number = toDecimal(value, places);
  return unit === 'each' ? number : `${number} ${unit}`;
}
