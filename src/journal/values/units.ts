import Fraction from 'fraction.js';
import { nearest } from '../diagnostics/nearest.ts';

export type Dimension =
  | 'length'
  | 'area'
  | 'volume'
  | 'mass'
  | 'torque'
  | 'pressure'
  | 'angle'
  | 'temperature'
  | 'time'
  | 'electric'
  | 'count'
  | 'other';

export interface Unit {
  /** As it is shown. */
  readonly symbol: string;
  readonly dimension: Dimension;
  /** What it is reckoned in. Units of one base convert into each other; others do not. */
  readonly base: string;
  /** How many of the base unit one of it is, exact. */
  readonly factor: Fraction;
  /** What nought of it is in the base unit: only scales of temperature begin elsewhere. */
  readonly zero: Fraction;
}

/** The unit a dimension is reckoned in; `electric` and `other` hold several that do not compare. */
const BASE_UNIT: Readonly<Record<Dimension, string | null>> = {
  length: 'm',
  area: 'm2',
  volume: 'L',
  mass: 'kg',
  torque: 'N.m',
  pressure: 'Pa',
  angle: 'deg',
  temperature: 'K',
  time: 's',
  electric: null,
  count: 'each',
  other: null,
};

const LBF = new Fraction('0.45359237').mul(new Fraction('9.80665'));
const KGF = new Fraction('9.80665');
const INCH = new Fraction('0.0254');

/**
 * Exact factors. Source: UCUM 2.1, tables of international customary, imperial and US volume and
 * avoirdupois units; the pound-force is the avoirdupois pound under standard gravity (9.80665 m/s2).
 * A base is named where the dimension alone does not say it.
 */
const ROWS: readonly (readonly [
  symbol: string,
  dimension: Dimension | readonly ['electric' | 'other', base: string],
  factor: Fraction | string,
  ...aliases: string[],
])[] = [
  ['mm', 'length', '0.001'],
  ['cm', 'length', '0.01'],
  ['m', 'length', '1'],
  ['km', 'length', '1000'],
  ['um', 'length', '0.000001', 'µm', 'μm'],
  ['thou', 'length', '0.0000254'],
  ['in', 'length', INCH, 'inch', 'inches', '"'],
  ['ft', 'length', '0.3048', 'feet', 'foot'],
  ['yd', 'length', '0.9144', 'yard', 'yards'],
  ['mi', 'length', '1609.344', 'mile', 'miles'],
  ['mm2', 'area', '0.000001', 'mm²'],
  ['cm2', 'area', '0.0001', 'cm²'],
  ['m2', 'area', '1', 'm²'],
  ['in2', 'area', INCH.mul(INCH), 'in²', 'sq in'],
  ['ft2', 'area', '0.09290304', 'ft²', 'sq ft'],
  ['ml', 'volume', '0.001', 'mL'],
  ['cl', 'volume', '0.01', 'cL'],
  ['dl', 'volume', '0.1', 'dL'],
  ['cm3', 'volume', '0.001', 'cm³', 'cc', 'ccm'],
  ['m3', 'volume', '1000', 'm³'],
  ['L', 'volume', '1', 'l', 'litre', 'litres'],
  ['imp-floz', 'volume', '0.0284130625'],
  ['imp-pt', 'volume', '0.56826125'],
  ['imp-qt', 'volume', '1.1365225'],
  ['imp-gal', 'volume', '4.54609'],
  ['us-floz', 'volume', '0.0295735295625'],
  ['us-pt', 'volume', '0.473176473'],
  ['us-qt', 'volume', '0.946352946'],
  ['us-gal', 'volume', '3.785411784'],
  ['mg', 'mass', '0.000001'],
  ['g', 'mass', '0.001'],
  ['kg', 'mass', '1'],
  ['oz', 'mass', '0.028349523125'],
  ['lb', 'mass', '0.45359237', 'lbs'],
  ['N.m', 'torque', '1', 'Nm', 'N·m'],
  ['lbf.ft', 'torque', LBF.mul(new Fraction('0.3048')), 'lbf·ft', 'lbf-ft', 'lb·ft', 'lb-ft', 'lb.ft', 'ft-lb'],
  ['lbf.in', 'torque', LBF.mul(INCH), 'lbf·in', 'lbf-in', 'lb·in', 'lb-in', 'lb.in', 'in-lb'],
  ['kgf.m', 'torque', KGF, 'kgf·m', 'kgf-m'],
  ['Pa', 'pressure', '1'],
  ['kPa', 'pressure', '1000'],
  ['MPa', 'pressure', '1000000'],
  ['bar', 'pressure', '100000'],
  ['psi', 'pressure', LBF.div(INCH.mul(INCH)), 'lbf/in2'],
  ['deg', 'angle', '1', '°'],
  ['arcmin', 'angle', new Fraction(1, 60), '′'],
  ['K', 'temperature', '1'],
  ['°C', 'temperature', '1', 'degC', '℃'],
  ['°F', 'temperature', new Fraction(5, 9), 'degF', '℉'],
  ['diff-C', ['other', 'kelvins apart'], '1', 'diff-K'],
  ['diff-F', ['other', 'kelvins apart'], new Fraction(5, 9)],
  ['s', 'time', '1', 'sec', 'seconds'],
  ['min', 'time', '60', 'minutes'],
  ['h', 'time', '3600', 'hours'],
  ['V', ['electric', 'V'], '1'],
  ['mV', ['electric', 'V'], '0.001'],
  ['kV', ['electric', 'V'], '1000'],
  ['A', ['electric', 'A'], '1'],
  ['mA', ['electric', 'A'], '0.001'],
  ['A.h', ['electric', 'A.h'], '1', 'Ah'],
  ['ohm', ['electric', 'ohm'], '1', 'Ω', 'ohms'],
  ['kohm', ['electric', 'ohm'], '1000', 'kΩ'],
  ['W', ['electric', 'W'], '1'],
  ['uF', ['electric', 'F'], '0.000001', 'µF', 'μF'],
  ['N', ['other', 'N'], '1'],
  ['lbf', ['other', 'N'], LBF],
  ['kgf', ['other', 'N'], KGF],
  ['rpm', ['other', 'rpm'], '1', 'rev/min'],
  ['%', ['other', '%'], '1'],
  ['each', 'count', '1', 'off', 'pcs', 'sheets', 'sheet'],
];

/** Where a scale of temperature has its nought, in kelvins: by definition, 0 °C is 273.15 K and 32 °F is 0 °C. */
const NOUGHT: Readonly<Record<string, Fraction>> = {
  '°C': new Fraction('273.15'),
  '°F': new Fraction('459.67').mul(5, 9),
};

/** What is bought by the piece and holds what its consumable says; until then it counts nothing but itself. */
export const PACKS = ['tube', 'can', 'tin', 'bottle', 'box', 'roll', 'set', 'pair'] as const;
export type Pack = (typeof PACKS)[number];

const table = new Map<string, Unit>();
for (const pack of PACKS) {
  const unit: Unit = { symbol: pack, dimension: 'count', base: pack, factor: new Fraction(1), zero: new Fraction(0) };
  for (const name of [pack, pack === 'box' ? 'boxes' : `${pack}s`]) table.set(name, unit);
}
for (const [symbol, of, factor, ...aliases] of ROWS) {
  const [dimension, own] = typeof of === 'string' ? [of, BASE_UNIT[of]] : of;
  const unit: Unit = { symbol, dimension, base: own ?? symbol, factor: new Fraction(factor), zero: NOUGHT[symbol] ?? new Fraction(0) };
  for (const name of [symbol, ...aliases]) table.set(name, unit);
}

/** Every unit by each way of writing it. */
export const UNITS: ReadonlyMap<string, Unit> = table;

/** Whether one unit can be turned into the other. */
export function comparable(a: Unit, b: Unit): boolean {
  return a.base === b.base;
}

/** Names that say too little, for the imperial unit and the US one differ. */
const EITHER: ReadonlyMap<string, string> = new Map([
  ['pt', 'pt'],
  ['pint', 'pt'],
  ['pints', 'pt'],
  ['qt', 'qt'],
  ['quart', 'qt'],
  ['gal', 'gal'],
  ['gallon', 'gal'],
  ['gallons', 'gal'],
  ['floz', 'floz'],
  ['fl oz', 'floz'],
]);

/** The imperial and the US unit that a bare `pt`, `gal` … could be, or null. */
export function imperialOrUs(name: string): readonly [string, string] | null {
  const end = EITHER.get(name.toLowerCase());
  return end === undefined ? null : [`imp-${end}`, `us-${end}`];
}

/** The unit that was most likely meant by a name: nothing where a letter more or less makes another measure of it. */
export function unitMeant(name: string): string | null {
  const plain = (written: string): string =>
    written
      .toLowerCase()
      .replace(/(.)\1+/g, '$1')
      .replace(/[\s.·-]/g, '');
  const same = [...UNITS.keys()].find((known) => plain(known) === plain(name));
  if (same !== undefined) return same;
  return name.length < 4
    ? null
    : nearest(
        name,
        [...UNITS.keys()].filter((known) => known.length >= 4),
      );
}
