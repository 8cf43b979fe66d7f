import { expect, test } from 'vitest';
import { toFinish } from '../../src/journal/registers/to-finish.ts';
import { hours, journal } from '../ledger/small-journal.ts';

const ITEMS = `opens:
  - { id: hoses, kind: buy, what: Hoses, on: brakes, price: 88.00 }
  - { id: fluid, kind: buy, what: Fluid, on: brakes }
  - { id: plating, kind: waiting, what: Rim at the plater, on: brakes, from: a plater, price: 120.00 }
  - { id: bleed, kind: task, what: Bleed, on: brakes, hours: 1.5 }
  - { id: look, kind: question, what: Which way round, on: brakes }
  - { id: paint, kind: task, what: Paint, on: frame, hours: 1h30m }`;
const SO_FAR = `${hours('jm', '2h')}\nbought: [{ what: Lining, as: part, for: brakes, cost: 30.00 }]`;

test('what is open is beside what is left, and nothing without a figure is in a sum', () => {
  const { record, problems } = journal(['2031-03-01', SO_FAR], ['2031-03-02', ITEMS]);
  expect(problems).toEqual([]);
  const [brakes, frame] = toFinish(record, null);
  expect([brakes?.toPay.sum, brakes?.quoted.sum, brakes?.work.sum]).toEqual([8800, 12_000, 90]);
  expect([brakes?.toPay.unsaid, brakes?.work.unsaid].map((list) => list?.map(({ id }) => id))).toEqual([['fluid'], ['look']]);
  // Two hours at 28.00 have cost 56.00, so an hour and a half ahead costs 42.00; 30.00 are spent.
  expect(brakes).toMatchObject({ labour: { cost: 5600, minutes: 120 }, labourAhead: 4200, spent: 3000 });
  expect(brakes?.willHaveCost).toBe(3000 + 5600 + 8800 + 12_000 + 4200);
  expect([brakes?.money?.left, brakes?.hours?.left]).toEqual([7000, 0]);
  // Nobody was charged for on the frame: no price of labour is made up.
  expect([frame?.work.sum, frame?.labourAhead, frame?.willHaveCost]).toEqual([90, null, 0]);
});

test('the hours of a thing to buy and the price of a task count as those of any other', () => {
  const open = `opens:
  - { id: canvas, kind: buy, what: Canvas, on: brakes, price: 120.00, hours: 12h }
  - { id: drill, kind: task, what: Drill, on: brakes, price: 8.00, hours: 1h }
  - { id: tap, kind: temporary, what: Tap, on: brakes, price: 2.00, before: stripped }
  - { id: plating, kind: waiting, what: Rim, on: brakes, price: 30.00, hours: 30m }`;
  const { record, problems } = journal(['2031-03-01', SO_FAR], ['2031-03-02', open]);
  expect(problems).toEqual([]);
  const [row] = toFinish(record, null);
  expect([row?.toPay.sum, row?.quoted.sum, row?.work.sum, row?.toPay.unsaid, row?.work.unsaid.map(({ id }) => id)]).toEqual([
    13_000,
    3000,
    810,
    [],
    ['tap'],
  ]);
  // An hour has cost 28.00: thirteen and a half cost 378.00.
  expect([row?.labourAhead, row?.willHaveCost]).toEqual([37_800, 3000 + 5600 + 13_000 + 3000 + 37_800]);
});

test('what was settled is ahead no more, and stands as it was on an earlier day', () => {
  const { record } = journal(['2031-03-01', SO_FAR], ['2031-03-02', ITEMS], ['2031-03-03', 'closes: [{ id: hoses }, { id: paint }]']);
  expect(toFinish(record, null).map(({ subsystem, toPay }) => [subsystem.id, toPay.sum])).toEqual([['brakes', 0]]);
  expect(toFinish(record, '2031-03-02').map(({ subsystem, toPay }) => [subsystem.id, toPay.sum])).toEqual([
    ['brakes', 8800],
    ['frame', 0],
  ]);
});

test('a part that is out counts with what was quoted, until it is back', () => {
  const { record, problems } = journal(
    ['2031-03-01', 'parts: [{ part: drum-spare, did: sent-out, to: a plater, quoted: 180.00 }]'],
    ['2031-03-09', 'parts: [{ part: drum-spare, did: returned }]'],
  );
  expect(problems).toEqual([]);
  expect(toFinish(record, '2031-03-05').map(({ subsystem, quoted }) => [subsystem.id, quoted.sum])).toEqual([['brakes', 18_000]]);
  expect(toFinish(record, null)).toEqual([]);
});

test('hours that are none are told', () => {
  expect(journal(['2031-03-02', 'opens: [{ id: bleed, kind: task, what: Bleed, hours: soon }]']).problems[0]).toMatch(/^A306 .*soon/);
});

test('one quotation that is said of a part and of what is awaited counts once', () => {
  const { record, problems } = journal([
    '2031-03-01',
    'parts: [{ part: drum-spare, did: sent-out, to: a plater, quoted: 180.00 }]\nopens: [{ id: plating, kind: waiting, what: Spare at the plater, on: drum-spare, from: a plater, price: 180.00 }]',
  ]);
  expect(problems).toEqual([]);
  expect(toFinish(record, null).map(({ quoted, willHaveCost, works }) => [quoted.sum, willHaveCost, works.length])).toEqual([
    [18_000, 18_000, 1],
  ]);
});
