import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import type { BillSource, LineSource } from '../../src/journal/compile/bill-source.ts';
import { billOf } from '../../src/journal/compile/bills.ts';
import { partedOver } from '../../src/journal/ledger/entries.ts';
import type { Place } from '../../src/journal/model.ts';
import { journal } from './small-journal.ts';

const SETTINGS = { currency: 'GBP', currencyDigits: 2, locale: 'en-GB' };
const HEAD = { id: '2031-03-12#bill-1', session: '2031-03-12', date: '2031-03-12' };

const charge = (subsystem: string, weight: number | string = 1) => ({ charge: { part: null, subsystem }, weight: new Fraction(weight) });

function line(cost: string, more: Partial<LineSource> = {}): LineSource {
  return {
    what: 'Pipe',
    as: 'part',
    consumable: null,
    amount: null,
    charges: [charge('brakes')],
    cost,
    tax: null,
    refund: null,
    refundOf: null,
    notCharged: null,
    deductible: null,
    ...more,
  };
}

function bill(lines: readonly LineSource[], more: Partial<BillSource> = {}) {
  // A field's place is told by its line here: the bill is line 1, its lines are 10 and on.
  const placeOf = (_: string, at?: number): Place => ({
    file: 'n.md',
    line: at === undefined ? 1 : 10 + at,
    column: 1,
    endLine: 1,
    endColumn: 1,
  });
  const none = { from: null, paper: null, currency: null, total: null, discount: null, carriage: null, rounding: null, tax: null };
  const { bill: made, diagnostics } = billOf({ ...none, lines, placeOf, ...more }, HEAD, SETTINGS);
  return { bill: made, gross: made?.lines.map((each) => each.gross), codes: diagnostics.map((each) => each.code), diagnostics };
}

describe('tax', () => {
  test('of the bill holds for lines that say nothing', () => {
    const { bill: made } = bill([line('12.00'), line('12.00', { tax: 'exempt' }), line('10.00', { tax: '5% on top' })], { tax: '20%' });
    expect(made?.lines.map(({ net, tax, gross }) => [net, tax, gross])).toEqual([
      [1000, 200, 1200],
      [1200, 0, 1200],
      [1000, 50, 1050],
    ]);
  });

  test('on top may be rounded by the line or once for the bill, as the total shows', () => {
    // 3 × 10.33 at 20 %, 2.066 each: 2.07 a line makes 37.20; 6.20 on 30.99 makes 37.19.
    const lines = [line('10.33'), line('10.33'), line('10.33')];
    const perLine = bill(lines, { tax: '20% on top', total: '37.20' });
    expect([perLine.codes, perLine.gross]).toEqual([[], [1240, 1240, 1240]]);
    const once = bill(lines, { tax: '20% on top', total: '37.19' });
    expect([once.codes, once.gross, once.bill?.rounding.map(({ net, tax }) => [net, tax])]).toEqual([[], [1240, 1240, 1240], [[0, -1]]]);
    expect(bill(lines, { tax: '20% on top', total: '37.16' }).codes).toEqual(['A806']);
  });
});

describe('discount and carriage', () => {
  test('are shared over the lines by value, and the total is what is to pay', () => {
    const { bill: made, codes } = bill([line('60.00'), line('30.00'), line('10.00')], {
      discount: '10.00',
      carriage: '5.01',
      total: '95.01',
    });
    expect(codes).toEqual([]);
    // −10.00 parts into 6.00, 3.00, 1.00; +5.01 into 3.006, 1.503, 0.501: the penny over goes to the line of 60.00.
    expect(made?.lines.map((each) => each.gross)).toEqual([5701, 2850, 950]);
    expect(made).toMatchObject({ gross: 9501, discount: 1000, carriage: 501 });
  });

  test('take the tax of the bill', () => {
    const { bill: made, codes } = bill([line('100.00')], { tax: '20% on top', discount: '10.00', carriage: '5.00', total: '114.00' });
    expect(codes).toEqual([]);
    expect(made?.lines[0]).toMatchObject({ net: 9500, tax: 1900, gross: 11_400 });
    expect(made).toMatchObject({ discount: 1200, carriage: 600 });
  });

  test('a discount may be said as a share of the lines, before carriage, in whichever currency they are', () => {
    // 5 % of 228.40 is 11.42; 2.5 % of 0.20 is half a cent, and away from zero.
    const lines = ['74.00', '62.00', '31.00', '27.00', '14.40', '20.00'].map((cost) => line(cost));
    const made = bill(lines, { discount: '5%', carriage: '8.50', tax: '20% on top', total: '270.58' });
    expect([made.codes, made.bill?.discount]).toEqual([[], 1370]);
    const abroad = bill([line('0.20')], { currency: 'EUR at 0.8571', discount: '2.5 %', total: '0.19' });
    expect(abroad.codes).toEqual([]);
    expect(bill([line('1.00'), line('1.00 EUR at 0.8571')], { discount: '5%' }).codes).toEqual(['A307']);
    expect(bill([line('1.00')], { discount: '101%' }).codes).toEqual(['A808']);
  });

  test('take it whether the bill has a total or not', () => {
    const { bill: made } = bill([line('100.00')], { tax: '20% on top', discount: '10.00', carriage: '5.00' });
    expect(made?.lines[0]).toMatchObject({ net: 9500, tax: 1900, gross: 11_400 });
  });

  test('on a bill with nothing to share over are refused', () => {
    expect(bill([line('0.00')], { carriage: '5.00' }).codes).toEqual(['A807']);
    expect(bill([], { discount: '5.00' }).codes).toEqual(['A807']);
  });

  test('cannot be negative, nor a discount more than the lines', () => {
    expect(bill([line('5.00')], { discount: '-1.00' }).codes).toEqual(['A808']);
    expect(bill([line('5.00')], { carriage: '-1.00' }).codes).toEqual(['A808']);
    expect(bill([line('5.00')], { discount: '6.00' }).codes).toEqual(['A808']);
  });
});

describe('a total that does not agree', () => {
  test('is shown beside what the lines make', () => {
    const { diagnostics } = bill([line('60.00'), line('30.00')], { discount: '2.00', carriage: '5.80', total: '94.20' });
    expect(diagnostics[0]).toMatchObject({ code: 'A806', place: { line: 1 } });
    expect(diagnostics[0]?.message).toContain('£94.20');
    expect(diagnostics[0]?.message).toContain('£93.80');
  });

  test('is told the tax on top that makes it, in place of a carriage that would', () => {
    const hint = (more: Partial<BillSource>) => bill([line('212.00')], { carriage: '24.00', ...more }).diagnostics[0]?.hint;
    expect(hint({ total: '283.20' })).toMatch(/on top of these, write it: `tax: 20% on top`\.$/);
    expect(hint({ total: '283.20', tax: '20%' })).toMatch(/`tax: 20% on top`\.$/);
    expect(hint({ total: '283.20', tax: '17.5% on top' })).not.toContain('tax:');
    expect(hint({ total: '260.00' })).toMatch(/Where its carriage is more, write it: `carriage: 48\.00`\.$/);
  });

  test('is a penny out and still wrong', () => expect(bill([line('10.00')], { total: '10.01' }).codes).toEqual(['A806']));
});

describe('another currency', () => {
  test('each amount is rounded once, and the total is compared as the paper has it', () => {
    // 42.00 × 0.8571 = 35.9982; 0.35 × 0.8571 = 0.299985
    const { bill: made, codes } = bill([line('42.00'), line('0.35')], { currency: 'EUR at 0.8571', total: '42.35' });
    expect(codes).toEqual([]);
    expect(made?.lines.map((each) => each.gross)).toEqual([3600, 30]);
    expect(made?.lines[0]?.foreign).toEqual({ currency: 'EUR', amount: 4200, rate: '0.8571' });
    const wrong = bill([line('42.00')], { currency: 'EUR at 0.8571', total: '36.00' });
    expect(wrong.codes).toEqual(['A806']);
    expect(wrong.diagnostics[0]?.message).toContain('€42.00');
  });

  test.each([
    ['EUR at 0', 'A313'],
    ['EUR', 'A313'],
    ['EUX at 1', 'A312'],
  ])('%s is %s', (currency, code) => expect(bill([line('42.00')], { currency }).codes).toEqual([code]));
});

describe('a line', () => {
  test.each([
    ['a negative cost without a reason', line('-5.00'), 'A808'],
    ['a refund that cost money', line('5.00', { refund: 'sent back' }), 'A808'],
    ['weights of nothing', line('5.00', { charges: [charge('brakes', 0), charge('frame', 0)] }), 'A807'],
    ['too many decimals', line('5.005'), 'A307'],
    ['tax over everything', line('5.00', { tax: '101%' }), 'A314'],
    ['an unknown currency', line('5.00 ZZZ at 1'), 'A312'],
    ['a rate of nothing', line('5.00 EUR at 0'), 'A313'],
  ])('with %s is refused where it stands', (_, wrong, code) => {
    const { bill: made, diagnostics } = bill([line('1.00'), wrong]);
    expect(made).toBeNull();
    expect(diagnostics).toMatchObject([{ code, place: { line: 11 } }]);
  });

  test('that came back is the purchase the other way round', () => {
    const parts = [charge('brakes', 1), charge('frame', 2), charge('trim', 4)];
    const [out, back] = [
      bill([line('48.61', { tax: '20%', charges: parts })]),
      bill([line('-48.61', { tax: '20%', charges: parts, refund: 'wrong bore' })]),
    ];
    const shares = [out, back].map(({ bill: made }) => made?.lines.flatMap((each) => partedOver(each, each.charges)) ?? []);
    expect(shares[0]?.map((share, i) => share.gross + (shares[1]?.[i]?.gross ?? 0))).toEqual([0, 0, 0]);
    expect(shares[0]?.map((share, i) => share.tax + (shares[1]?.[i]?.tax ?? 0))).toEqual([0, 0, 0]);
  });
});

test('a share of no money has no tax', () => {
  // 20 pence with 6 of tax: parting the tax by weight alone would lay a penny of it to the first share.
  const charges = [charge('frame', 15), ...[1, 2, 3, 4, 5].map(() => charge('brakes', 77))];
  const { bill: made } = bill([line('0.20', { tax: '43%', charges })]);
  const shares = made?.lines.flatMap((each) => partedOver(each, each.charges)) ?? [];
  expect(shares.map((share) => share.gross)).toEqual([0, 4, 4, 4, 4, 4]);
  expect(shares[0]).toEqual({ net: 0, tax: 0, gross: 0 });
});

test('whatever is on a bill: lines make the total, net and tax make gross, shares make the line', () => {
  const money = fc.integer({ min: 1, max: 100_000 });
  const tax = fc.constantFrom(null, '20%', '5%', '17.5%', '20% on top', 'exempt');
  const oneLine = fc.record({ cost: money, tax, weights: fc.array(fc.integer({ min: 0, max: 9 }), { minLength: 1, maxLength: 4 }) });
  fc.assert(
    fc.property(
      fc.array(oneLine, { minLength: 1, maxLength: 6 }),
      money,
      money,
      tax,
      fc.integer({ min: -100, max: 100 }),
      (lines, carriage, off, billTax, round) => {
        const least = Math.min(...lines.map((each) => each.cost));
        // At most half of the least line, for tax on top makes a discount larger than it is written.
        const discount = off % Math.max(1, Math.floor(least / 2));
        const written = lines.map((each) =>
          line((each.cost / 100).toFixed(2), {
            tax: each.tax,
            charges: [charge('frame', 1), ...each.weights.map((weight) => charge('brakes', weight))],
          }),
        );
        const { bill: made, codes } = bill(written, {
          carriage: (carriage / 100).toFixed(2),
          discount: (discount / 100).toFixed(2),
          tax: billTax,
          rounding: (round / 100).toFixed(2),
        });
        expect(codes).toEqual([]);
        const sum = (list: readonly number[] = []) => list.reduce((a, b) => a + b, 0);
        expect(sum(made?.lines.map((each) => each.gross)) + round).toBe(made?.gross);
        for (const each of made?.lines ?? []) {
          expect(each.net + each.tax).toBe(each.gross);
          expect(each.charges.reduce((all, one) => all.add(one.weight), new Fraction(0)).equals(1)).toBe(true);
          const shares = partedOver(each, each.charges);
          expect(sum(shares.map((share) => share.gross))).toBe(each.gross);
          expect(sum(shares.map((share) => share.tax))).toBe(each.tax);
          for (const share of shares) {
            expect(share.net + share.tax).toBe(share.gross);
            expect(share.tax).toBeLessThanOrEqual(share.gross);
          }
        }
      },
    ),
  );
});

test('a bill whose tax is on top is told in the figures that stand on its paper, with every total that they make', () => {
  const bill = (total: string) =>
    journal([
      '2031-03-12',
      `bills: [{ discount: 10%, carriage: 9.50, tax: 23% on top, total: ${total}, lines: [{ what: Velvet, cost: 168.00 }, { what: Leaf, cost: 24.60 }] }]`,
    ]).problems;
  expect(bill('224.89')).toEqual([]);
  expect(bill('226.00')).toEqual([
    'A806 The total is £226.00, but lines of £192.60 less discount £19.26 and carriage £9.50 make £182.84, with tax £224.89 or £224.90.',
  ]);
});
