import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Quantity } from '../../src/journal/model.ts';
import { isWithin, readLimits } from '../../src/journal/values/limits.ts';
import { convertTo, formatQuantity, readQuantity, UNITS } from '../../src/journal/values/quantity.ts';

function quantity(text: string): Quantity {
  const read = readQuantity(text);
  if (!read.ok) throw new Error(read.problem);
  return read.value;
}

function inUnit(text: string, unit: string): string {
  const converted = convertTo(quantity(text), unit);
  return converted.ok ? converted.value.toFraction() : converted.code;
}

describe('conversion', () => {
  // Source: UCUM (The Unified Code for Units of Measure); NIST SP 811 B.8 rounds the same values.
  test.each([
    ['1 in', 'm', '0.0254'],
    ['1 ft', 'm', '0.3048'],
    ['1 thou', 'mm', '0.0254'],
    ['1 lb', 'kg', '0.45359237'],
    ['1 oz', 'kg', '0.028349523125'],
    ['1 imp-gal', 'L', '4.54609'],
    ['1 imp-pt', 'L', '0.56826125'],
    ['1 imp-qt', 'L', '1.1365225'],
    ['1 imp-floz', 'ml', '28.4130625'],
    ['1 us-gal', 'L', '3.785411784'],
    ['1 us-pt', 'L', '0.473176473'],
    ['1 us-qt', 'L', '0.946352946'],
    ['1 us-floz', 'ml', '29.5735295625'],
    ['1 lbf.ft', 'N.m', '1.3558179483314004'],
    ['1 lbf.in', 'N.m', '0.1129848290276167'],
    ['1 kgf.m', 'N.m', '9.80665'],
    ['1 lbf', 'N', '4.4482216152605'],
    ['1 in2', 'm2', '0.00064516'],
    ['1 ft2', 'm2', '0.09290304'],
    ['1 bar', 'Pa', '100000'],
    ['1 yd', 'm', '0.9144'],
    ['1 mi', 'm', '1609.344'],
    ['1 dl', 'ml', '100'],
    ['1 m3', 'L', '1000'],
    ['1 cc', 'ml', '1'],
    ['1° 30′', 'arcmin', '90'],
    ['-0 deg 45 arcmin', 'deg', '-0.75'],
    ['1 h', 's', '3600'],
  ])('%s in %s is exactly %s', (text, unit, exact) => {
    const converted = convertTo(quantity(text), unit);
    expect(converted.ok && converted.value.toString(30)).toBe(exact);
  });

  // Source: NIST SP 811 B.8 and B.9: 0 °C is 273.15 K, 32 °F is 0 °C, 212 °F is 100 °C; -40 is the same on both.
  test.each([
    ['0 °C', 'K', '273.15'],
    ['32 °F', '°C', '0'],
    ['212 °F', '°C', '100'],
    ['-40 °F', '°C', '-40'],
    ['0 K', '°F', '-459.67'],
    ['9 diff-F', 'diff-C', '5'],
  ])('%s on the scale of %s is %s', (text, unit, exact) => {
    const converted = convertTo(quantity(text), unit);
    expect(converted.ok && converted.value.toString(30)).toBe(exact);
  });

  // Source: UCUM gives psi as 6894.757293168361 Pa, which does not end: the factor is lbf ÷ in2.
  test('one psi is 6894.757293168361 Pa to its last digit', () => {
    const converted = convertTo(quantity('1 psi'), 'Pa');
    expect(converted.ok && formatQuantity(converted.value, 'Pa', 12)).toBe('6894.757293168361 Pa');
    expect(converted.ok && converted.value.equals('6894.757293168361')).toBe(false);
  });

  // Source: the definitions; the imperial and the US gallon are 160 and 128 of their own fluid ounces.
  test.each([
    ['1 imp-gal', 'imp-floz', '160'],
    ['1 imp-gal', 'imp-pt', '8'],
    ['1 us-gal', 'us-floz', '128'],
    ['1 lb', 'oz', '16'],
    ['1 ft', 'in', '12'],
    ['1 lbf.ft', 'lbf.in', '12'],
    ['1 kPa', 'Pa', '1000'],
  ])('%s in %s is %s', (text, unit, exact) => expect(inUnit(text, unit)).toBe(exact));

  test('there and back is the same quantity, for every pair of units of one base', () => {
    const units = [...new Set([...UNITS.values()])];
    fc.assert(
      fc.property(fc.constantFrom(...units), fc.constantFrom(...units), fc.integer({ min: 1, max: 1e6 }), (a, b, n) => {
        const to = convertTo(quantity(`${n} ${a.symbol}`), b.symbol);
        expect(to.ok).toBe(a.base === b.base);
        if (to.ok) expect(to.value.mul(b.factor).add(b.zero).sub(a.zero).div(a.factor).equals(n)).toBe(true);
      }),
    );
  });

  test.each([
    ['9 in', 'kg'],
    ['1 V', 'ohm'],
    ['1 A', 'V'],
    ['3', 'L'],
    ['1 bar', 'N.m'],
    ['5 %', 'each'],
  ])('%s is no %s', (text, unit) => expect(inUnit(text, unit)).toBe('A309'));
});

describe('reading', () => {
  test.each([
    ['5/16 in', '5/16'],
    ['1 1/2 in', '3/2'],
    ['1-1/2 in', '3/2'],
    ['9.043 in', '9043/1000'],
    ['-0.5 deg', '-1/2'],
    ['0.1 mm', '1/10'],
    ['3', '3'],
    ['12lbf·ft', '12'],
  ])('%s is %s, exactly', (text, exact) => expect(quantity(text).value.toFraction()).toBe(exact));

  test.each([
    ['12 lbf·ft', 'lbf.ft'],
    ['12 lb-ft', 'lbf.ft'],
    ['12 Nm', 'N.m'],
    ['5/16"', 'in'],
    ['2 litres', 'L'],
    ['3', 'each'],
    ['100 Ω', 'ohm'],
  ])('%s is written in %s', (text, unit) => expect(quantity(text).unit).toBe(unit));

  test.each([
    ['2 gal', 'imp-gal or us-gal'],
    ['2 pt', 'imp-pt or us-pt'],
    ['2 fl oz', 'imp-floz or us-floz'],
    ['300 mll', 'ml'],
    ['2 litr', 'litre'],
    ['1,500 mm', 'no comma'],
  ])('%s is refused, and the hint says %s', (text, hint) => {
    const read = readQuantity(text);
    expect(read).toMatchObject({ ok: false, code: 'A308' });
    expect(read.ok ? '' : read.hint).toContain(hint);
  });

  test.each(['', 'in', '5/0 in', '1e3 mm', '10.5.2 mm', '.5 mm', '1 2 mm', `${'9'.repeat(60)} mm`, 'a lot'])('%j is refused', (text) =>
    expect(readQuantity(text)).toMatchObject({ ok: false, code: 'A308' }),
  );
});

describe('limits', () => {
  const limits = (text: string, value: string) => {
    const read = readLimits(text, quantity(value));
    return read.ok ? isWithin(quantity(value), read.value) : read.code;
  };

  test.each([
    ['9.000..9.060 in', '9.043 in', true],
    ['9.000..9.060 in', '9.060 in', true],
    ['9.000..9.060 in', '9.061 in', false],
    ['..9.060 in', '8 in', true],
    ['9.000.. in', '8.999 in', false],
    ['228.6..230.124 mm', '9.060 in', true],
    ['1/4..5/16 in', '5/16 in', true],
    ['5 3/8..5 1/2 in', '5 7/16 in', true],
    ['-1.5..-0.5 deg', '-1 deg', true],
    ['−1.5..−0.5 deg', '-0.4 deg', false],
    ['..-20 °C', '-21 °C', true],
    ['-0.2.. mm', '-0.3 mm', false],
    ['9,00..9,06 in', '9.043 in', true],
  ] as const)('%s holds for %s: %s', (text, value, within) => expect(limits(text, value)).toBe(within));

  test.each([
    ['9.060..9.000 in', 'A308'],
    ['.. in', 'A308'],
    ['9.000 in', 'A308'],
    ['1..2 kg', 'A309'],
    ['1..2 furlong', 'A308'],
    ['', 'A308'],
  ])('%s is %s', (text, code) => expect(limits(text, '9.043 in')).toBe(code));
});
