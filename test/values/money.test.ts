import codes from 'currency-codes';
import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import {
  currencyDigits,
  formatMinutes,
  formatMoney,
  minorToDecimal,
  readAmount,
  readMoney,
  roundHalfAway,
  shareOut,
} from '../../src/journal/values/money.ts';

const POUNDS = { locale: 'en-GB', currency: 'GBP', currencyDigits: 2 };

/** The value that was read, or the code of what went wrong. */
function readingOf<T>(reading: { ok: true; value: T } | { ok: false; code: string }): T | string {
  return reading.ok ? reading.value : reading.code;
}

describe('currencies', () => {
  // Source: ISO 4217 list one, in the npm package currency-codes (published 2024-06-25).
  test('every ISO 4217 currency of trade has the decimals of ISO 4217', () => {
    const listed = new Map(codes.data.map((each) => [each.code, each.digits]));
    // XDR and XSU are units of account that no bill is made out in.
    const shared = Intl.supportedValuesOf('currency').filter((code) => listed.has(code) && code !== 'XDR' && code !== 'XSU');
    expect(shared.length).toBeGreaterThan(150);
    expect(shared.map((code) => [code, currencyDigits(code)])).toEqual(shared.map((code) => [code, listed.get(code)]));
  });

  // Source: ISO 4217:2015, its list one of current currencies (from memory): 2 for GBP EUR USD, 0 for JPY ISK KRW, 3 for KWD BHD TND.
  test.each([
    ['GBP', 2],
    ['EUR', 2],
    ['USD', 2],
    ['JPY', 0],
    ['ISK', 0],
    ['KRW', 0],
    ['KWD', 3],
    ['BHD', 3],
    ['TND', 3],
  ] as const)('%s has %i decimals', (code, digits) => expect(currencyDigits(code)).toBe(digits));

  test('old bills may be in a currency that the list no longer has', () => {
    expect(readingOf(readMoney('10.00 HRK at 0.11', 'GBP', 2))).toMatchObject({ minor: 110 });
  });

  test('what is not a currency has none', () => {
    expect([currencyDigits('ABC'), currencyDigits('gbp'), currencyDigits('')]).toEqual([null, null, null]);
  });
});

/** Minor units of a foreign amount at a rate, reckoned without the money library: fraction.js, rounded half away from zero. */
function exchangedElsewhere(amount: number, rate: string, from: number, to: number): number {
  return roundHalfAway(new Fraction(rate).mul(amount).mul(10n ** BigInt(to), 10n ** BigInt(from)));
}

test('a foreign amount is exact until it is rounded once, half away from zero, whatever the decimals of both', () => {
  const rates = fc
    .tuple(fc.integer({ min: 0, max: 300 }), fc.integer({ min: 1, max: 999_999 }))
    .map(([whole, after]) => `${whole}.${after}`);
  fc.assert(
    fc.property(
      fc.integer({ min: -100_000, max: 100_000 }),
      rates,
      fc.constantFrom('EUR', 'JPY', 'KWD', 'MGA'),
      fc.constantFrom(0, 2, 3),
      (amount, rate, code, digits) => {
        const from = currencyDigits(code) ?? 0;
        const read = readMoney(`${minorToDecimal(amount, from)} ${code} at ${rate}`, 'GBP', digits);
        expect(readingOf(read)).toEqual({
          minor: exchangedElsewhere(amount, rate, from, digits),
          foreign: { currency: code, amount, rate },
        });
      },
    ),
  );
  expect(readingOf(readMoney('0.05 EUR at 0.1', 'GBP', 2))).toMatchObject({ minor: 1 });
  expect(readingOf(readMoney('-0.05 EUR at 0.1', 'GBP', 2))).toMatchObject({ minor: -1 });
});

describe('reading an amount', () => {
  test.each([
    ['12.50', 1250],
    ['12.5', 1250],
    ['12', 1200],
    ['-3', -300],
    ['0.01', 1],
    ['-0.00', 0],
    ['0007.00', 700],
    ['12,50', 1250],
    ['-4,2', -420],
  ])('%s pounds is %i pence', (text, pence) => expect(readingOf(readAmount(text, 2))).toBe(pence));

  test('the decimals of the currency are the most there can be', () => {
    expect(readingOf(readAmount('12.505', 2))).toBe('A307');
    expect(readingOf(readAmount('1200', 0))).toBe(1200);
    expect(readingOf(readAmount('1200.5', 0))).toBe('A307');
    expect(readingOf(readAmount('1.234', 3))).toBe(1234);
  });

  test.each([
    ['1,200.00', '1200.00'],
    ['1,250', '1250'],
    ['£12', '12'],
    ['.5', '0.5'],
  ])('%s is refused and the hint says how to write it', (text, written) => {
    const read = readAmount(text, 2, 'GBP');
    expect(read).toMatchObject({ ok: false, code: 'A307' });
    expect(read.ok ? '' : read.hint).toContain(`Write ${written}`);
  });

  test.each(['', '-', '1e3', '0x10', 'NaN', 'Infinity', '1 000', '9'.repeat(400), '1000000000.01'])('%j is refused', (text) =>
    expect(readingOf(readAmount(text, 2))).toBe('A307'),
  );

  test('any amount is read back from its decimal', () => {
    fc.assert(
      fc.property(fc.integer({ min: -1e11, max: 1e11 }), fc.integer({ min: 0, max: 3 }), (minor, digits) => {
        expect(readingOf(readAmount(minorToDecimal(minor, digits), digits))).toBe(minor === 0 ? 0 : minor);
      }),
    );
  });
});

describe('another currency', () => {
  test('is turned over at its rate and rounded once, half away from zero', () => {
    // 42.00 × 0.8571 = 35.9982
    expect(readingOf(readMoney('42.00 EUR at 0.8571', 'GBP', 2))).toEqual({
      minor: 3600,
      foreign: { currency: 'EUR', amount: 4200, rate: '0.8571' },
    });
    // 0.10 × 0.05 = 0.005: exactly half a penny
    expect(readingOf(readMoney('0.10 EUR at 0.05', 'GBP', 2))).toMatchObject({ minor: 1 });
    expect(readingOf(readMoney('-0.10 EUR at 0.05', 'GBP', 2))).toMatchObject({ minor: -1 });
  });

  test('brings its own decimals', () => {
    // 5,000 yen at 0.0052 = 26.00 pounds; 1.234 dinar at 2.5 = 3.085, half up to 3.09
    expect(readingOf(readMoney('5000 JPY at 0.0052', 'GBP', 2))).toMatchObject({ minor: 2600, foreign: { amount: 5000 } });
    expect(readingOf(readMoney('1.234 KWD at 2.5', 'GBP', 2))).toMatchObject({ minor: 309, foreign: { amount: 1234 } });
    expect(readingOf(readMoney('5000.5 JPY at 0.0052', 'GBP', 2))).toBe('A307');
  });

  test.each([
    ['5 EUR at 0', 'A313'],
    ['5 EUR at 0.000', 'A313'],
    ['5 EUR at -1', 'A313'],
    ['5 EUR', 'A313'],
    ['5 EUX at 1', 'A312'],
    ['5 GBP at 1', 'A313'],
    ['999999999 EUR at 999', 'A307'],
  ])('%s is %s', (text, code) => expect(readingOf(readMoney(text, 'GBP', 2))).toBe(code));

  test('a misspelt currency is offered the one that was meant', () => {
    expect(readMoney('5 eur at 0.9', 'GBP', 2)).toMatchObject({ ok: false, hint: 'Did you mean EUR?' });
  });
});

describe('rounding', () => {
  test.each([
    ['5/2', 3],
    ['-5/2', -3],
    ['1/2', 1],
    ['-1/2', -1],
    ['49/100', 0],
    ['-49/100', 0],
    ['7/2', 4],
  ])('%s is %i', (exact, whole) => expect(roundHalfAway(new Fraction(exact))).toBe(whole));

  // Against the language's own rounding, which is exact for halves of small whole numbers and rounds them up.
  test('agrees with Math.round on the size of a number', () => {
    fc.assert(
      fc.property(fc.integer({ min: -100_000, max: 100_000 }), fc.constantFrom(2, 4, 8, 16), (n, d) => {
        expect(roundHalfAway(new Fraction(n, d))).toBe(Math.sign(n) * Math.round(Math.abs(n) / d) || 0);
      }),
    );
  });
});

describe('sharing out', () => {
  const weights = (list: readonly (number | string)[]) => list.map((each) => new Fraction(each));

  test('the largest remainders get the pennies that are over', () => {
    expect(shareOut(100, weights([1, 1, 1]))).toEqual([34, 33, 33]);
    expect(shareOut(100, weights([1, 2, 4]))).toEqual([14, 29, 57]);
    expect(shareOut(-100, weights([1, 1, 1]))).toEqual([-34, -33, -33]);
    expect(shareOut(5, weights([0, 1]))).toEqual([0, 5]);
  });

  test('shares add up, and each is within one of its exact part', () => {
    const list = fc.array(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 8 }).filter((all) => all.some((each) => each > 0));
    fc.assert(
      fc.property(fc.integer({ min: -1e9, max: 1e9 }), list, (total, all) => {
        const shares = shareOut(total, weights(all));
        expect(shares.reduce((a, b) => a + b, 0)).toBe(total);
        const sum = all.reduce((a, b) => a + b, 0);
        for (const [i, share] of shares.entries()) {
          expect(
            new Fraction(total)
              .mul(all[i] ?? 0, sum)
              .sub(share)
              .abs()
              .lt(1),
          ).toBe(true);
        }
        expect(shareOut(-total || 0, weights(all))).toEqual(shares.map((share) => -share || 0));
      }),
    );
  });

  test('nothing to share over is refused', () => {
    expect(() => shareOut(5, weights([0, 0]))).toThrow(RangeError);
    expect(() => shareOut(5, weights([2, -1]))).toThrow(RangeError);
  });
});

describe('writing', () => {
  test('money is written as its locale writes it', () => {
    expect(formatMoney(123450, POUNDS)).toBe('£1,234.50');
    expect(formatMoney(-5, POUNDS)).toBe('−£0.05');
    expect(formatMoney(1200, { locale: 'de-DE', currency: 'JPY', currencyDigits: 0 })).toBe('1.200\u00a0¥');
    expect(formatMoney(120050, { locale: 'en-GB', currency: 'HUF', currencyDigits: 2 })).toContain('1,200.50');
  });

  test('an amount beyond the reach of a float keeps its last penny', () => {
    expect(formatMoney(9_007_199_254_740_991, POUNDS)).toBe('£90,071,992,547,409.91');
  });

  test.each([
    [0, '0 min'],
    [45, '45 min'],
    [60, '1 h'],
    [120, '2 h'],
    [750, '12 h 30 min'],
  ])('%i minutes is %s', (minutes, words) => expect(formatMinutes(minutes)).toBe(words));
});

test('a text that goes on and on is no amount, and is not searched for one for ever', () => {
  expect(readingOf(readAmount('0.0000000001'.repeat(15_000), 2, 'GBP'))).toBe('A307');
}, 4000);
