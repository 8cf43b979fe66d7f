/** Conversions beside a general-purpose library of units, js-quantities: none of its factors are ours. */
import Qty from 'js-quantities';
import { describe, expect, test } from 'vitest';
import { convertTo, readQuantity, UNITS } from '../../src/journal/values/quantity.ts';
import { PACKS } from '../../src/journal/values/units.ts';

/** What that library calls our units. */
const ELSEWHERE: Readonly<Record<string, string>> = {
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  km: 'km',
  um: 'um',
  thou: 'mil',
  in: 'in',
  ft: 'ft',
  yd: 'yd',
  mi: 'mi',
  mm2: 'mm2',
  cm2: 'cm2',
  m2: 'm2',
  in2: 'in2',
  ft2: 'ft2',
  ml: 'ml',
  cl: 'cl',
  dl: 'dl',
  cm3: 'cm3',
  m3: 'm3',
  L: 'l',
  'us-floz': 'floz',
  'us-pt': 'pt',
  'us-qt': 'qt',
  'us-gal': 'gal',
  mg: 'mg',
  g: 'g',
  kg: 'kg',
  oz: 'oz',
  lb: 'lb',
  'N.m': 'N*m',
  'lbf.ft': 'lbf*ft',
  'lbf.in': 'lbf*in',
  'kgf.m': 'kg*gee*m',
  Pa: 'Pa',
  kPa: 'kPa',
  MPa: 'MPa',
  bar: 'bar',
  psi: 'psi',
  deg: 'deg',
  arcmin: 'arcmin',
  s: 's',
  min: 'min',
  h: 'h',
  V: 'V',
  mV: 'mV',
  kV: 'kV',
  A: 'A',
  mA: 'mA',
  'A.h': 'A*h',
  ohm: 'ohm',
  kohm: 'kohm',
  W: 'W',
  uF: 'uF',
  N: 'N',
  lbf: 'lbf',
  kgf: 'kg*gee',
  rpm: 'rpm',
};
/** It has the US gallon alone, and counts nothing; temperatures it has apart, as scales and as differences. */
const SCALES: Readonly<Record<string, string>> = { K: 'tempK', '°C': 'tempC', '°F': 'tempF' };
const APART: Readonly<Record<string, string>> = { 'diff-C': 'degC', 'diff-F': 'degF' };
const NOT_THERE = ['imp-floz', 'imp-pt', 'imp-qt', 'imp-gal', '%', 'each', ...PACKS, ...Object.keys(SCALES), ...Object.keys(APART)];
/** It rounds some factors to eight digits, the psi to six. */
const ROUNDED = 1e-6;

const SYMBOLS = [...new Set([...UNITS.values()].map(({ symbol }) => symbol))];
const SHARED = Object.keys(ELSEWHERE);

function ours(value: number, from: string, to: string): number | null {
  const read = readQuantity(`${value} ${from}`);
  if (!read.ok) throw new Error(read.problem);
  const converted = convertTo(read.value, to);
  return converted.ok ? converted.value.valueOf() : null;
}

describe('a general-purpose library of units', () => {
  test('knows every unit but those named here', () => {
    expect(SYMBOLS.filter((symbol) => !(symbol in ELSEWHERE)).sort()).toEqual([...NOT_THERE].sort());
  });

  test('converts the same pairs as we do, and refuses the same', () => {
    const pairs = SHARED.flatMap((a) => SHARED.map((b) => [a, b] as const));
    const other = pairs.filter(([a, b]) => Qty(1, ELSEWHERE[a] ?? '').isCompatible(ELSEWHERE[b] ?? '') !== (ours(1, a, b) !== null));
    expect(other).toEqual([]);
  });

  test('converts every pair by the same factor, to the digits it has', () => {
    const pairs = SHARED.flatMap((a) => SHARED.filter((b) => ours(1, a, b) !== null).map((b) => [a, b] as const));
    expect(pairs.length).toBeGreaterThan(200);
    const wrong = pairs.filter(([a, b]) => {
      const theirs = Qty(7, ELSEWHERE[a] ?? '').to(ELSEWHERE[b] ?? '').scalar;
      return !(Math.abs((ours(7, a, b) ?? 0) / theirs - 1) < ROUNDED);
    });
    expect(wrong).toEqual([]);
  });

  test('converts temperatures as scales, and what lies between two as differences', () => {
    for (const names of [SCALES, APART]) {
      for (const [a, theirA] of Object.entries(names)) {
        for (const [b, theirB] of Object.entries(names)) {
          expect(ours(451, a, b), `${a} in ${b}`).toBeCloseTo(Qty(451, theirA).to(theirB).scalar, 6);
        }
      }
    }
    expect(ours(5, '°C', 'diff-C')).toBeNull();
  });
});
