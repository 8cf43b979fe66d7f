import fc from 'fast-check';
import Fraction from 'fraction.js';
import { expect, test } from 'vitest';
import { applyTax, readPercent, readTax } from '../../src/journal/values/tax.ts';

const taxOf = (text: string) => {
  const read = readTax(text);
  if (!read.ok) throw new Error(read.problem);
  return read.value;
};

test('tax inside the cost is taken out of it', () => {
  // 48.60 with 20 % inside: 48.60 ÷ 6 = 8.10 (practice: the VAT fraction one sixth)
  expect(applyTax(4860, taxOf('20%'))).toEqual({ net: 4050, tax: 810, gross: 4860 });
});

test('tax on top of the cost is added to it', () => {
  expect(applyTax(4050, taxOf('20% on top'))).toEqual({ net: 4050, tax: 810, gross: 4860 });
});

test('exempt and unsaid cost what they cost', () => {
  expect(applyTax(4860, taxOf('exempt'))).toEqual({ net: 4860, tax: 0, gross: 4860 });
});

test('half a penny of tax goes away from zero, and a refund mirrors it', () => {
  // 2.50 at 1 % on top is 2.5 pence
  expect(applyTax(250, taxOf('1% on top')).tax).toBe(3);
  expect(applyTax(-250, taxOf('1% on top')).tax).toBe(-3);
});

test('gross is net and tax, whatever the rate', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: -1e9, max: 1e9 }),
      fc.integer({ min: 0, max: 10_000 }),
      fc.constantFrom('', ' on top'),
      (cost, hundredths, how) => {
        const { net, tax, gross } = applyTax(cost, taxOf(`${hundredths / 100}%${how}`));
        expect(net + tax).toBe(gross);
        expect(how === '' ? gross : net).toBe(cost);
        const exact = new Fraction(how === '' ? net : cost).mul(hundredths, 10_000);
        // Inside, the tax is rounded on the gross, so it is off its part of the net by no more than that rounding.
        expect(exact.sub(tax).abs().lte(new Fraction(1))).toBe(true);
      },
    ),
  );
});

test.each([
  ['17.5%', '7/40'],
  ['20 %', '1/5'],
  ['0%', '0'],
  ['100%', '1'],
])('%s is %s', (text, exact) => {
  const read = readPercent(text);
  expect(read.ok && read.value.toFraction()).toBe(exact);
});

test.each([
  ['120%', 'A314'],
  ['-5%', 'A314'],
  ['100.01%', 'A314'],
  ['20', 'A316'],
  ['%', 'A316'],
  ['twenty', 'A316'],
  ['20% below', 'A316'],
  ['20%%', 'A316'],
])('%s is %s', (text, code) => expect(readTax(text)).toMatchObject({ ok: false, code }));
