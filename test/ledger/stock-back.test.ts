/** What goes back to the seller, what is missed at a stock-take, and what turns up. */
import { describe, expect, test } from 'vitest';
import { ledgerAt } from '../../src/journal/ledger/ledger-at.ts';
import { reconcile } from '../../src/journal/ledger/reconcile.ts';
import { stockAt } from '../../src/journal/ledger/stock-at.ts';
import { sumOf, viewAt } from '../../src/journal/ledger/sums.ts';
import { JOURNAL, journal, journalWith, type NoteOf } from './small-journal.ts';

const cleaner = (amount: string, cost: string, more = '') => `bought: [{ consumable: cleaner, amount: ${amount}, cost: ${cost}${more} }]`;
const counted = (amount: string, more = '') => `counted: [{ consumable: cleaner, amount: ${amount}, because: looked again${more} }]`;
const left = (...notes: readonly NoteOf[]) => {
  const made = journal(...notes);
  const [row] = stockAt(made.record, null);
  expect(reconcile(ledgerAt(made.record, made.record.day)).holds).toBe(true);
  return { ...made, amount: row?.left.amount.valueOf(), value: row?.left.value };
};

describe('a refund', () => {
  test('that says nothing of tax gives back the tax that its purchase bore', () => {
    const { record, problems } = journal(
      ['2031-03-12', cleaner('1 L', '120.00', ', tax: 20%')],
      ['2031-03-14', cleaner('1 L', '-120.00', ', refund: wrong kind')],
    );
    expect(problems).toEqual([]);
    expect(record.ledger.entries.map(({ net, tax, gross, taxRate }) => [net, tax, gross, taxRate?.toFraction()])).toEqual([
      [10_000, 2000, 12_000, '1/5'],
      [-10_000, -2000, -12_000, '1/5'],
    ]);
    expect(sumOf(viewAt(record, 'cost', null))).toMatchObject({ net: 0, tax: 0, gross: 0 });
  });

  test('of something else than stock gives it back too', () => {
    const bought = (cost: string, more = '') => `bought: [{ what: Lamp, as: part, for: drum, cost: ${cost}${more} }]`;
    const { record } = journal(['2031-03-12', bought('12.00', ', tax: 20%')], ['2031-03-14', bought('-6.00', ', refund: dented')]);
    expect(sumOf(viewAt(record, 'paid', null))).toMatchObject({ net: 500, tax: 100, gross: 600 });
  });

  test('whose tax differs from its purchase leaves no tax without money', () => {
    const { record } = journal(
      ['2031-03-12', cleaner('1 L', '120.00', ', tax: 20%')],
      ['2031-03-14', cleaner('1 L', '-120.00', ', tax: exempt, refund: wrong kind')],
    );
    for (const { net, tax, gross } of viewAt(record, 'cost', null)) expect([net, tax, gross]).toEqual([0, 0, 0]);
  });

  const layers: readonly NoteOf[] = [
    ['2031-03-12', cleaner('5 L', '10.00')],
    ['2031-03-13', cleaner('5 L', '30.00')],
  ];
  test('takes the layer of the purchase it names, else the newest', () => {
    const use = ['2031-03-20', 'used: [{ consumable: cleaner, amount: 7 L, on: frame }]'] as const;
    const back = (more: string) => journal(...layers, ['2031-03-14', cleaner('5 L', `${more}`)], use);
    // Opening 2 L for 9.00; then what is not given back.
    const used = (more: string) => back(more).record.ledger.entries.at(-1)?.gross;
    expect(used('-10.00, refund: stale, refund-of: 2031-03-12')).toBe(900 + 3000);
    expect(used('-30.00, refund: stale')).toBe(900 + 1000);
  });

  test('of a note that bought the same twice is of the one of which so much was paid', () => {
    const two = 'bought: [{ consumable: cleaner, amount: 1 L, cost: 30.00 }, { consumable: cleaner, amount: 2 L, cost: 4.00 }]';
    const back = (cost: string) =>
      journal(['2031-03-12', two], ['2031-03-14', cleaner('1 L', `${cost}, refund: stale, refund-of: 2031-03-12`)]);
    expect(back('-25.00').problems).toEqual([]);
    expect(back('-25.00').record.ledger.bills.at(-1)?.lines[0]?.purchase).toMatch(/#bought-1$/);
    expect(back('-2.00').record.ledger.bills.at(-1)?.lines[0]?.purchase).toMatch(/#bought-2$/);
    expect(back('-30.01').problems[0]).toMatch(/^A811 /);
    const thing = (cost: string) => `{ what: Lamp, as: part, for: drum, cost: ${cost} }`;
    const lamps = journal(
      ['2031-03-12', `bought: [${thing('9.00')}, ${thing('3.00')}]`],
      ['2031-03-14', 'bought: [{ what: Lamp, as: part, for: drum, cost: -9.00, refund: dented, refund-of: 2031-03-12 }]'],
    );
    expect(lamps.problems).toEqual([]);
  });

  test('is never more than was paid', () => {
    expect(journal(...layers, ['2031-03-14', cleaner('1 L', '-30.01', ', refund: stale')]).problems[0]).toMatch(/^A811 .*£30\.00/);
    expect(journal(...layers, ['2031-03-14', cleaner('1 L', '-10.01', ', refund: stale, refund-of: 2031-03-12')]).problems[0]).toMatch(
      /^A811/,
    );
    const twice: NoteOf[] = ['2031-03-14', '2031-03-15'].map((date) => [date, cleaner('1 L', '-16.00', ', refund: stale')]);
    expect(journal(...layers, ...twice).problems).toHaveLength(1);
    const lamp = (cost: string, more = '') => `bought: [{ what: Lamp, as: part, for: drum, cost: ${cost}${more} }]`;
    expect(journal(['2031-03-12', lamp('5.00')], ['2031-03-14', lamp('-5.01', ', refund: dented')]).problems[0]).toMatch(/^A811/);
  });

  test('of a purchase that is not there is refused, and names what is', () => {
    expect(journal(...layers, ['2031-03-14', cleaner('1 L', '-1.00', ', refund: stale, refund-of: 2031-03-11')]).problems[0]).toMatch(
      /^A409/,
    );
    expect(
      journal(['2031-03-11', ''], ...layers, ['2031-03-14', cleaner('1 L', '-1.00', ', refund: stale, refund-of: 2031-03-11')]).problems[0],
    ).toMatch(/^A812/);
  });
});

describe('a stock-take', () => {
  test('that puts a miscount right undoes its loss, and no more', () => {
    const { record, amount, value } = left(
      ['2031-03-12', counted('0.5 L')],
      ['2031-03-13', counted('1.5 L')],
      ['2031-03-14', counted('2 L')],
    );
    expect(viewAt(record, 'cost', null).map(({ gross }) => gross)).toEqual([675, -450, -225]);
    expect([amount, value]).toEqual([2, 900]);
  });

  test('that finds what nobody bought takes it at nothing, or at the value it says', () => {
    expect(left(['2031-03-12', counted('3 L')])).toMatchObject({ amount: 3, value: 900 });
    const valued = left(['2031-03-12', counted('3 L', ', value: 4.00')]);
    expect(valued).toMatchObject({ amount: 3, value: 1300 });
    expect(viewAt(valued.record, 'cost', null).map(({ gross }) => gross)).toEqual([-400]);
  });

  test('finds what it missed first where it stood: it is used before what came later', () => {
    const { record } = left(
      ['2031-03-12', counted('1 L')],
      ['2031-03-13', cleaner('1 L', '20.00')],
      ['2031-03-14', counted('3 L')],
      ['2031-03-15', 'used: [{ consumable: cleaner, amount: 2 L, on: frame }]'],
    );
    expect(record.ledger.entries.at(-1)?.gross).toBe(900);
  });

  test('is alike at the moving average', () => {
    const { record } = journalWith(
      { journal: JOURNAL.replace('stock: fifo', 'stock: average') },
      ['2031-03-12', counted('0.5 L')],
      ['2031-03-13', counted('2 L')],
    );
    expect(viewAt(record, 'cost', null).map(({ gross }) => gross)).toEqual([675, -675]);
    expect(stockAt(record, null)[0]?.left.value).toBe(900);
  });
});
