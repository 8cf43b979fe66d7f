import { describe, expect, test } from 'vitest';
import { budgets } from '../../src/journal/ledger/budgets.ts';
import { subsystemByMonth } from '../../src/journal/ledger/by-month.ts';
import { ledgerAt } from '../../src/journal/ledger/ledger-at.ts';
import { costByDecision, costOfPosition } from '../../src/journal/ledger/of-position.ts';
import { hoursByWeek } from '../../src/journal/ledger/over-time.ts';
import { reconcile } from '../../src/journal/ledger/reconcile.ts';
import { statementOf } from '../../src/journal/ledger/statement.ts';
import { stockAt } from '../../src/journal/ledger/stock-at.ts';
import { sumBy, sumOf, viewAt } from '../../src/journal/ledger/sums.ts';
import { gross, hours, journal, type NoteOf } from './small-journal.ts';

describe('labour', () => {
  test('is at the rate in force on the day', () => {
    const { record, problems } = journal(['2031-04-05', hours('jm', '1h30m')], ['2031-04-06', hours('jm', '1h30m')]);
    expect(problems).toEqual([]);
    expect(gross(record)).toEqual([4200, 4500]);
  });

  test('before there is a rate is an error that names the first', () => {
    const { problems } = journal(['2030-09-30', hours('jm', '1h')]);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(/^A810 .*Jory.*2030-09-30.*2030-10-01/);
  });

  test('that is not charged keeps its minutes and costs nothing', () => {
    const { record } = journal(['2031-03-12', hours('jm', '1h', 'brakes', ', unpaid: learning')]);
    expect(record.ledger.entries).toMatchObject([{ minutes: 60, gross: 0, kind: 'labour', person: 'jm' }]);
    expect(record.ledger.entries[0]?.what).toContain('learning');
  });

  test('is rounded once, half away from zero', () => {
    // 30.00 an hour is 50 pence a minute; 28.00 is 46.66…: 7 min = 326.66…
    expect(gross(journal(['2031-03-12', hours('jm', '7m')]).record)).toEqual([327]);
  });
});

describe('consumables', () => {
  const buy = 'bought: [{ consumable: cleaner, amount: 5 L, cost: 21.90, tax: 20% }]';

  test('are costed as they are used, the oldest first', () => {
    const { record } = journal(['2031-03-12', `${buy}\nused: [{ consumable: cleaner, amount: 3 L, on: drum }]`]);
    // 2 L for 9.00 and 1 L of 5 for 21.90: 4.38
    expect(viewAt(record, 'cost', null)).toMatchObject([
      { kind: 'consumable', gross: 900 + 438, subsystem: 'brakes', position: 'drum', paid: false },
    ]);
    expect(viewAt(record, 'paid', null)).toMatchObject([{ kind: 'consumable', gross: 2190, tax: 365, cost: false }]);
  });

  test('carry the tax they were bought with', () => {
    const { record } = journal(['2031-03-12', buy], ['2031-03-13', 'used: [{ consumable: cleaner, amount: 7 L, on: drum }]']);
    expect(viewAt(record, 'cost', null)).toMatchObject([{ net: 900 + 1825, tax: 365, gross: 3090 }]);
  });

  test('used beyond what there is are an error that names the shortage', () => {
    const { problems } = journal(['2031-03-12', 'used: [{ consumable: cleaner, amount: 2300 ml, on: brakes }]']);
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(/^A805 Brake cleaner: 2300 ml used, but there is 2000 ml \(2 L\) on the shelf: 300 ml short/);
  });

  test('used before they were bought are an error, and on the day they were bought are not', () => {
    const use = 'used: [{ consumable: cleaner, amount: 6 L, on: brakes }]';
    expect(journal(['2031-03-11', use], ['2031-03-12', buy]).problems[0]).toMatch(/^A805 .*4 L short/);
    expect(journal(['2031-03-12', `${buy}\n${use}`]).problems).toEqual([]);
  });

  test.each(['0 L', '-1 L'])('cannot be used by %s', (amount) => {
    expect(journal(['2031-03-12', `used: [{ consumable: cleaner, amount: ${amount}, on: brakes }]`]).problems[0]).toMatch(/^A308/);
  });

  test('missing at a stock-take have cost the job, and what is over is worth nothing', () => {
    const short = journal(['2031-03-12', 'counted: [{ consumable: cleaner, amount: 1.5 L, because: leaked }]']).record;
    expect(viewAt(short, 'cost', null)).toMatchObject([{ gross: 225, subsystem: 'general', kind: 'consumable' }]);
    const over = journal(['2031-03-12', 'counted: [{ consumable: cleaner, amount: 3 L, because: a tin turned up }]']).record;
    expect(viewAt(over, 'cost', null)).toEqual([]);
    expect(stockAt(over, null)[0]?.left).toMatchObject({ value: 900 });
    expect([short, over].map((record) => reconcile(ledgerAt(record, record.day)).holds)).toEqual([true, true]);
  });

  test('missing at a stock-take are charged to a client only where the note lays them to something of the vehicle, and given back where they turn up', () => {
    const take = (amount: string, more = '') =>
      `counted: [{ consumable: cleaner, amount: ${amount}, because: "stock-take, can leaks"${more} }]`;
    const entries = (...notes: readonly NoteOf[]) =>
      journal(...notes).record.ledger.entries.map(({ what, subsystem, gross, notCharged }) => [
        what,
        subsystem,
        gross,
        notCharged === null,
      ]);
    expect(entries(['2031-03-12', take('1.5 L')], ['2031-03-13', take('2 L')])).toEqual([
      ['Brake cleaner, missing at a stock-take: can leaks', 'general', 225, false],
      ['Brake cleaner, turned up at a stock-take: can leaks', 'general', -225, false],
    ]);
    expect(entries(['2031-03-12', take('1.5 L', ', on: brakes')], ['2031-03-13', take('2 L')])).toEqual([
      ['Brake cleaner, missing at a stock-take: can leaks', 'brakes', 225, true],
      ['Brake cleaner, turned up at a stock-take: can leaks', 'brakes', -225, true],
    ]);
    const bare = 'counted: [{ consumable: cleaner, amount: 1.5 L, because: stock-take }]';
    expect(entries(['2031-03-12', bare])[0]?.[0]).toBe('Brake cleaner, missing at a stock-take');
  });

  test('given back leave shelf and purse as they were', () => {
    const back = 'bought: [{ consumable: cleaner, amount: 5 L, cost: -21.90, tax: 20%, refund: wrong kind }]';
    const { record, problems } = journal(['2031-03-12', buy], ['2031-03-14', back]);
    expect(problems).toEqual([]);
    expect(sumOf(viewAt(record, 'paid', null))).toMatchObject({ net: 0, tax: 0, gross: 0 });
    expect(sumOf(viewAt(record, 'cost', null)).gross).toBe(0);
    expect(stockAt(record, null)[0]?.left).toMatchObject({ value: 900 });
    expect(stockAt(record, null)[0]?.left.amount.equals(2)).toBe(true);
  });

  test('given back for less than they cost leave the difference with the job', () => {
    const back = 'bought: [{ consumable: cleaner, amount: 7 L, cost: -20.00, refund: sold on }]';
    const { record } = journal(['2031-03-12', buy], ['2031-03-14', back]);
    expect(viewAt(record, 'cost', null).map((entry) => entry.gross)).toEqual([3090 - 2000]);
    expect(reconcile(ledgerAt(record, record.day)).holds).toBe(true);
  });

  test('given back beyond what there is are an error', () => {
    expect(journal(['2031-03-12', 'bought: [{ consumable: cleaner, amount: 3 L, cost: -9.00, refund: no use }]']).problems[0]).toMatch(
      /^A805 .*given back.*1 L short/,
    );
  });
});

describe('a bill', () => {
  test('that is split lays each share where it belongs', () => {
    const { record } = journal(['2031-03-12', 'bought: [{ what: Skimmed, as: outside-work, cost: 42.01, split: { drum: 1, frame: 1 } }]']);
    expect(record.ledger.entries).toMatchObject([
      { gross: 2101, subsystem: 'brakes', part: 'drum', position: 'drum' },
      { gross: 2100, subsystem: 'frame', part: null, position: null },
    ]);
  });

  test('in another currency that is split lays its share of either to each', () => {
    const line = 'bought: [{ what: Skimmed, as: outside-work, cost: 42.01 EUR at 0.5, split: { drum: 1, frame: 1 } }]';
    const { record } = journal(['2031-03-12', line]);
    // 42.01 × 0.5 = 21.005, rounded once to 21.01.
    expect(record.ledger.entries.map(({ gross, foreign }) => [gross, foreign])).toEqual([
      [1051, { currency: 'EUR', amount: 2101, rate: '0.5' }],
      [1050, { currency: 'EUR', amount: 2100, rate: '0.5' }],
    ]);
  });

  test('counts a candidate part under its position', () => {
    const { record } = journal(['2031-03-12', 'bought: [{ what: Drum, as: part, for: drum-spare, cost: 30.00 }]']);
    expect(costOfPosition(record, 'drum', null)).toMatchObject({ gross: 3000 });
  });

  test('for stock costs no position anything before it is used', () => {
    const { record } = journal(['2031-03-12', 'bought: [{ consumable: cleaner, amount: 1 L, cost: 5.00, for: drum }]']);
    expect(costOfPosition(record, 'drum', null)).toMatchObject({ gross: 0, entries: [] });
  });

  test('and its refund come to nothing', () => {
    const line = (cost: string, why: string) => `bought: [{ what: Cylinder, as: part, for: drum, cost: ${cost}, tax: 20% on top${why} }]`;
    const { record } = journal(['2031-03-12', line('48.61', '')], ['2031-03-20', line('-48.61', ', refund: wrong bore')]);
    expect(sumOf(viewAt(record, 'paid', null))).toMatchObject({ net: 0, tax: 0, gross: 0 });
  });
});

test('a month table has a row for every subsystem, and for general when something was laid to it', () => {
  const rows = (fields: string) => subsystemByMonth(journal(['2031-03-12', fields]).record, 'cost', null).rows.map((row) => row.subsystem);
  expect(rows('bought: [{ what: A, as: tool, for: frame, cost: 1.00 }]')).toEqual(['brakes', 'frame']);
  expect(rows('bought: [{ what: A, as: tool, cost: 1.00 }]')).toEqual(['brakes', 'frame', 'general']);
});

test('a sale is set against what was paid and what the job cost', () => {
  const { record } = journal([
    '2031-03-12',
    'bought: [{ what: Drum, as: part, for: drum, cost: 30.00 }]\nsold: [{ what: Old lamps, on: frame, price: 12.00 }]',
  ]);
  expect(sumOf(viewAt(record, 'paid', null)).gross).toBe(1800);
  expect(sumOf(viewAt(record, 'cost', null)).gross).toBe(1800);
  expect(sumBy(record.ledger.entries, (entry) => entry.kind).get('sale')?.gross).toBe(-1200);
});

test('a budget says what is used, what is left, and when it is passed', () => {
  const buy = 'bought: [{ what: Lining, as: part, for: brakes, cost: 120.00 }]';
  const { record } = journal(['2031-03-12', `${hours('jm', '1h')}\n${buy}`]);
  const [brakes, frame] = budgets(record.journal, ledgerAt(record, record.day));
  expect(brakes?.hours).toMatchObject({ budget: 120, used: 60, left: 60, passed: false });
  expect(brakes?.hours?.share?.toFraction()).toBe('1/2');
  expect(brakes?.money).toMatchObject({ budget: 10_000, used: 12_000, left: -2000, passed: true });
  expect(frame?.money).toBeNull();
  const spentToThePenny = journal(['2031-03-12', buy.replace('120.00', '100.00')]).record;
  expect(budgets(spentToThePenny.journal, ledgerAt(spentToThePenny, '2031-03-12'))[0]?.money).toMatchObject({ left: 0, passed: false });
  expect(budgets(record.journal, ledgerAt(record, '2031-03-11'))[0]?.money).toMatchObject({ used: 0, passed: false });
});

test('the cost of a position is parted by the decision that was in force', () => {
  const decide = (verdict: string) => `decisions: [{ part: drum, verdict: ${verdict}, because: it is so }]`;
  const { record } = journal(
    ['2031-03-01', hours('jm', '1h', 'drum')],
    ['2031-03-02', `${decide('keep')}\n${hours('jm', '2h', 'drum')}`],
    ['2031-03-03', hours('jm', '3h', 'drum')],
    ['2031-03-04', `${decide('repair')}\n${hours('jm', '4h', 'drum')}`],
  );
  const parted = costByDecision(record, 'drum', null);
  expect(parted.map(({ decisions, sum }) => [decisions[0]?.verdict ?? null, sum.minutes])).toEqual([
    [null, 60],
    ['keep', 300],
    ['repair', 240],
  ]);
  expect(costByDecision(record, 'drum', '2031-03-03').map(({ sum }) => sum.minutes)).toEqual([60, 300]);
});

test('hours are by ISO week, and a week without work is there', () => {
  const { record } = journal(['2030-12-29', hours('jm', '1h')], ['2030-12-30', hours('jm', '2h')], ['2031-01-14', hours('rh', '3h')]);
  expect(hoursByWeek(record, null).map(({ week, sum }) => [week, sum.minutes])).toEqual([
    ['2030-W52', 60],
    ['2031-W01', 120],
    ['2031-W02', 0],
    ['2031-W03', 180],
  ]);
  expect(hoursByWeek(record, '2030-12-30')).toHaveLength(2);
  expect(hoursByWeek(journal().record, null)).toEqual([]);
});

describe('a statement', () => {
  const { record } = journal(
    ['2031-03-31', 'bought: [{ what: Before, as: part, for: brakes, cost: 1.00 }]'],
    [
      '2031-04-05',
      `${hours('jm', '1h')}\nbought: [{ what: Lining, as: part, for: brakes, cost: 12.05, tax: 20% }, { what: Skimmed, as: outside-work, for: drum, cost: 42.00, tax: 20% }]`,
    ],
    ['2031-04-06', `hours: [{ by: jm, on: brakes, time: 1h }, { by: jm, on: brakes, time: 30m, unpaid: learning }]`],
    ['2031-04-07', 'used: [{ consumable: cleaner, amount: 1 L, on: brakes }]'],
    ['2031-05-01', 'bought: [{ what: After, as: part, for: brakes, cost: 1.00 }]'],
  );
  const statement = statementOf(record, '2031-04-01', '2031-04-30');

  test('holds the job cost of its days and no other, marked up on the net by kind', () => {
    const groups = statement.groups.map(({ kind, sum: { cost, net, markUp, tax, charged } }) => [kind, cost, net, markUp, tax, charged]);
    // 12.05 with 20 % inside is 10.04 net, and 10 % of that 1.004.
    expect(groups).toEqual([
      ['labour', 5800, 5800, 0, 0, 5800],
      ['part', 1205, 1205, 100, 0, 1305],
      ['consumable', 450, 450, 0, 0, 450],
      ['outside-work', 4200, 4200, 0, 0, 4200],
    ]);
    expect(statement.sum).toMatchObject({ markUp: 100, tax: 0, charged: 5800 + 1305 + 450 + 4200 });
  });

  test('takes in its first and its last day', () => {
    expect(statementOf(record, '2031-03-31', '2031-03-31').sum.cost).toBe(100);
    expect(statementOf(record, '2031-04-05', '2031-04-06').groups.flatMap(({ lines }) => lines)).toHaveLength(4);
    expect(statementOf(record, '2031-04-01', '2031-04-04').groups).toEqual([]);
  });

  test('tells hours by rate, those not charged apart', () => {
    expect(statement.hours.map(({ person, perHour, sum }) => [person, perHour, sum.minutes, sum.charged])).toEqual([
      ['jm', 2800, 60, 2800],
      ['jm', 3000, 60, 3000],
    ]);
    expect(statement.notCharged.map(({ minutes, notCharged, charged }) => [minutes, notCharged, charged])).toEqual([[30, 'learning', 0]]);
  });

  test('tells how what was paid stands to tax, each rate in a row of its own, and labour in none', () => {
    expect(statement.inside.map(({ standing, rate, tax, gross }) => [standing, rate?.toFraction(), tax, gross])).toEqual([
      ['rated', '1/5', 201 + 700, 5405],
      ['several', undefined, 0, 450],
    ]);
  });
});

test('every entry has an id of its own and the line it came from', () => {
  const buy =
    'bought: [{ consumable: cleaner, amount: 5 L, cost: 21.90 }, { what: A, as: tool, cost: 5.00, split: { brakes: 1, frame: 2 } }]';
  const bills =
    'bills: [{ from: a, lines: [{ what: B, as: tool, cost: 1.00 }, { what: C, as: fee, cost: 1.00, split: { drum: 1, frame: 1 } }] }]';
  const { record } = journal([
    '2031-03-12',
    [hours('jm', '1h'), buy, bills, 'sold: [{ what: D, price: 1.00 }]', 'used: [{ consumable: cleaner, amount: 1 L, on: drum }]'].join(
      '\n',
    ),
  ]);
  const { entries } = record.ledger;
  expect(entries).toHaveLength(9);
  expect(new Set(entries.map((entry) => entry.id)).size).toBe(9);
  for (const entry of entries) expect(entry.place).toMatchObject({ file: 'sessions/2031-03-12-0.md' });
  expect(new Set(entries.map((entry) => entry.place.line)).size).toBe(5);
});
