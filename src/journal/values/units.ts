import Fraction from 'fraction.js';
import type { Dimension } from '../model.ts';

export interface Unit {
  /** As it is shown. */
  readonly symbol: string;
  readonly dimension: Dimension;
  /** How many of the dimension's base unit one of it is, exact. */
  readonly factor: Fraction;
}

/** The unit every dimension is reckoned in. */
export const BASE_UNIT: Readonly<Record<Dimension, string>> = {
  length: 'm',
  area: 'm2',
  volume: 'L',
  mass: 'kg',
  torque: 'N.m',
  pressure: 'Pa',
  angle: 'deg',
  electric: 'V',
  count: 'each',
  other: '1',
};

const LBF = new Fraction('0.45359237').mul(new Fraction('9.80665'));
const INCH = new Fraction('0.0254');

/**
 * Exact factors. Source: UCUM 2.1, tables of international customary, imperial and US volume and
 * avoirdupois units; the pound-force is the avoirdupois pound under standard gravity (9.80665 m/s2).
 */
const ROWS: readonly (readonly [symbol: string, dimension: Dimension, factor: Fraction | string, ...aliases: string[]])[] = [
  ['mm', 'length', '0.001'],
  ['cm', 'length', '0.01'],
  ['m', 'length', '1'],
  ['thou', 'length', '0.0000254'],
  ['in', 'length', INCH, 'inch', 'inches', '"'],
  ['ft', 'length', '0.3048', 'feet', 'foot'],
  ['mm2', 'area', '0.000001', 'mm²'],
  ['cm2', 'area', '0.0001', 'cm²'],
  ['m2', 'area', '1', 'm²'],
  ['ft2', 'area', '0.09290304', 'ft²', 'sq ft'],
  ['ml', 'volume', '0.001', 'mL'],
  ['cl', 'volume', '0.01', 'cL'],
  ['L', 'volume', '1', 'l', 'litre', 'litres'],
  ['imp-floz', 'volume', '0.0284130625'],
  ['imp-pt', 'volume', '0.56826125'],
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
  ['lbf.ft', 'torque', LBF.mul(new Fraction('0.3048')), 'lbf·ft', 'lb-ft', 'lb.ft', 'ft-lb'],
  ['lbf.in', 'torque', LBF.mul(INCH), 'lbf·in', 'lb-in', 'lb.in', 'in-lb'],
  ['Pa', 'pressure', '1'],
  ['kPa', 'pressure', '1000'],
  ['MPa', 'pressure', '1000000'],
  ['bar', 'pressure', '100000'],
  ['psi', 'pressure', LBF.div(INCH.mul(INCH)), 'lbf/in2'],
  ['deg', 'angle', '1', '°'],
  ['V', 'electric', '1'],
  ['A', 'other', '1'],
  ['ohm', 'other', '1', 'Ω'],
  ['%', 'other', '0.01'],
  ['each', 'count', '1', 'off', 'pcs', 'sheets', 'sheet'],
];

const table = new Map<string, Unit>();
for (const [symbol, dimension, factor, ...aliases] of ROWS) {
  const unit: Unit = { symbol, dimension, factor: new Fraction(factor) };
  for (const name of [symbol, ...aliases]) table.set(name, unit);
}

/** Every unit by each way of writing it. */
export const UNITS: ReadonlyMap<string, Unit> = table;

/** `A`, `ohm` and `%` share the dimension `other` without being comparable; everything else goes by dimension. */
export function comparable(a: Unit, b: Unit): boolean {
  return a.dimension === b.dimension && (a.dimension !== 'other' || a.symbol === b.symbol);
}
