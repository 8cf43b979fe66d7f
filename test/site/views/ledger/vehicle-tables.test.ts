import { expect, test } from 'vitest';
import { copyOf } from '../../../../src/journal/copy/copy.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { deductible, entryList, ofTheVehicle } from '../../../../src/site/views/ledger/vehicle-tables.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { JOURNAL, journalWith } from '../../../ledger/small-journal.ts';

const { record } = journalWith({ journal: `${JOURNAL}copies: { public: { leave-out: [money] } }\n` }, [
  '2031-03-01',
  'bought: [{ what: The van, as: vehicle, cost: 1850.00 }, { what: A jack, as: tool, on: general, cost: 20.00, deductible: yes }]',
]);

test('a copy without money has no table of the price of the vehicle, or of what may be deducted: it would say that both were nothing', () => {
  const tables = (copy: typeof record) => {
    const site = { ...copy, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') };
    return [ofTheVehicle, deductible].map((of) => entryList(sheetOf(site, 'ledger.html'), of(copy), 'What')?.markup ?? null);
  };
  expect(tables(record)).toEqual([expect.stringContaining('1,850.00'), expect.stringContaining('20.00')]);
  expect(tables(copyOf(record, 'public'))).toEqual([null, null]);
});
