import { expect, test } from 'vitest';
import { stockAt } from '../../../../src/journal/ledger/stock-at.ts';
import { shownHoldings, shownMovements } from '../../../../src/site/views/stock/adding-up.ts';
import { CONSUMABLES, journalWith } from '../../../ledger/small-journal.ts';

const GREASE = `${CONSUMABLES}grease: { name: Grease, unit: g }\n`;

test('quantities that do not end in three places add up as they are shown', () => {
  // A pound is 453.59237 g, 2.6 oz are 73.708725125 g: rounded one by one, 453.592 − 73.709 would show 379.884 left.
  const { record } = journalWith({ consumables: GREASE }, [
    '2031-03-12',
    'bought: [{ consumable: grease, amount: 1 lb, cost: 4.00 }]\nused: [{ consumable: grease, amount: 2.6 oz, on: frame }]',
  ]);
  const row = stockAt(record, null).find(({ consumable }) => consumable.id === 'grease');
  const numbers = Object.values(row ? shownHoldings(row) : {}).map((amount) => amount.valueOf());
  expect(numbers).toEqual([0, 453.592, 73.708, 379.884]);
  expect(shownMovements(row?.movements ?? []).map(({ amount, left }) => [amount.valueOf(), left.valueOf()])).toEqual([
    [453.592, 453.592],
    [-73.708, 379.884],
  ]);
});
