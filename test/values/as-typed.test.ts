/** Figures as phones, word processors and price tags write them: read, or refused with a repair that keeps what was meant. */
import { describe, expect, test } from 'vitest';
import { readMoney } from '../../src/journal/values/money.ts';
import { readQuantity } from '../../src/journal/values/quantity.ts';
import type { Reading } from '../../src/journal/values/reading.ts';
import { readTax } from '../../src/journal/values/tax.ts';
import { readTime } from '../../src/journal/values/time.ts';

const inPounds = (text: string) => readMoney(text, 'GBP', 2);
const pence = (text: string) => {
  const read = inPounds(text);
  return read.ok ? read.value.minor : read.hint;
};
const hintOf = (read: Reading<unknown>) => (read.ok ? 'it was read' : (read.hint ?? 'none'));

describe('money', () => {
  test.each([
    ['\u221212.50', -1250],
    ['\u201312.50', -1250],
    ['\uff0d12.50', -1250],
    ['\u00a012.50\u202f', 1250],
    ['\uff15\uff10.\uff10\uff10', 5000],
    ['\u0665\u0660', 5000],
    ['42.00\u00a0EUR at\u20090.8571', 3600],
  ])('%j is simply read', (text, minor) => expect(pence(text)).toBe(minor));

  // Each repair is typed again: it must be read, and mean what was written.
  test.each([
    ['(12.50)', '-12.50', -1250],
    ['12.50-', '-12.50', -1250],
    ['12.50\u2212', '-12.50', -1250],
    ['50p', '0.50', 50],
    ['£12.50', '12.50', 1250],
    ['-£12.50', '-12.50', -1250],
    ['(£1,200.00)', '-1200.00', -120000],
    ['1 200,50', '1200.50', 120050],
    ['1.200,50', '1200.50', 120050],
    ['GBP 12.50', '12.50', 1250],
    ['42.00 EUR @ 0.8571', '42.00 EUR at 0.8571', 3600],
    ['42.00 EUR@0.8571', '42.00 EUR at 0.8571', 3600],
  ])('%s is refused, and %s is offered', (text, repair, minor) => {
    expect(pence(text)).toContain(`Write ${repair}`);
    expect(pence(repair)).toBe(minor);
  });

  test.each(['€42', 'EUR 42', '42€', '42 €', '42 EUR'])('%s is not taken for pounds', (text) => {
    expect(pence(text)).toContain('42 EUR at RATE');
  });

  test.each(['$42', '42 kr', '10%', '12.50 c', '1,5,0', '5 pound 20'])('%s is offered no amount', (text) => {
    expect(hintOf(inPounds(text))).not.toMatch(/Write -?\d/);
  });

  test('an amount without its tax keeps both in the repair', () => {
    expect(pence('12.50 +VAT')).toMatch(/12\.50.*on top/);
    expect(pence('12.50 + 20% VAT')).toMatch(/12\.50.*20% on top/);
  });

  test.each(['42 EUR at 0.8 at 0.9', '42 EUR @ 0.8 @ 0.9', '42 EUR at 0.8 0.9'])('%s has two rates, and none is taken', (text) =>
    expect(inPounds(text)).toMatchObject({ ok: false, code: 'A313' }),
  );

  test('a comma that may be either mark is not guessed at', () => {
    expect(hintOf(readMoney('1,200', 'KWD', 3))).not.toMatch(/Write \d/);
    expect(hintOf(readMoney('1,200', 'GBP', 2))).toContain('Write 1200');
  });
});

describe('tax', () => {
  test('a share of one is not taken for as many per cent', () => {
    expect(hintOf(readTax('0.2'))).not.toContain('Write 0.2%');
    expect(hintOf(readTax('20'))).toContain('Write 20%');
  });
  test('full-width digits and signs are read', () => expect(readTax('\uff12\uff10\uff05')).toMatchObject({ ok: true }));
});

describe('a quantity', () => {
  test.each([
    ['\u22120.5 mm', '-1/2'],
    ['\uff15\u00a0mm', '5'],
    ['1½ in', '3/2'],
    ['⅜ in', '3/8'],
  ])('%j is simply read', (text, exact) => {
    const read = readQuantity(text);
    expect(read.ok ? read.value.value.toFraction() : read.problem).toBe(exact);
  });

  test.each(['5 - 3/8 L', '5 -3/8 L', '5- 3/8 L'])('%s is a sum nobody did, and no amount', (text) =>
    expect(readQuantity(text)).toMatchObject({ ok: false, code: 'A308' }),
  );

  test.each(['2 zg', '3 mz', '1 bin', '2 km', '4 gr', '5 hl'])('%s is not taken for another measure', (text) =>
    expect(hintOf(readQuantity(text))).not.toMatch(/Did you mean/),
  );
});

test.each([
  ['1h 75m', '2h15m'],
  ['1h75m', '2h15m'],
  ['PT1H75M', '2h15m'],
])('%s is refused, and %s is offered', (text, repair) => {
  const read = readTime(text, '2031-03-12', 'Europe/London');
  expect(hintOf(read)).toContain(`Write ${repair}`);
});
