import { expect, test } from 'vitest';
import { stockAt } from '../../src/journal/ledger/stock-at.ts';
import { journalWith } from '../ledger/small-journal.ts';

const SEALANT = 'sealant: { name: Sealant, unit: ml, tube: 310 ml }\nclips: { name: Clips, unit: set }\n';

test('a consumable bought by the tube is kept in its own unit', () => {
  const { record, problems } = journalWith({ consumables: SEALANT }, [
    '2031-03-12',
    'bought: [{ consumable: sealant, amount: 2 tubes, cost: 12.40 }, { consumable: clips, amount: 2 sets, cost: 5.00 }]\nused: [{ consumable: sealant, amount: 1/2 tube, on: frame }]',
  ]);
  expect(problems).toEqual([]);
  const rows = stockAt(record, null).map(({ bought, used, left }) => [bought, used, left].map(({ amount }) => amount.valueOf()));
  expect(rows).toEqual([
    [620, 155, 465],
    [2, 0, 2],
  ]);
});

test.each([
  ['sealant', '1 can', /A309 How much a can of Sealant holds/],
  ['clips', '1 pair', /A309/],
])('%s has no %s', (id, amount, problem) => {
  const { problems } = journalWith({ consumables: SEALANT }, [
    '2031-03-12',
    `bought: [{ consumable: ${id}, amount: ${amount}, cost: 1.00 }]`,
  ]);
  expect(problems[0]).toMatch(problem);
});
