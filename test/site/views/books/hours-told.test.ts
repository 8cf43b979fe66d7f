import { expect, test } from 'vitest';
import { copyOf } from '../../../../src/journal/copy/copy.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { bookPage, hoursTold } from '../../../../src/site/views/books/book-page.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { JOURNAL, journalWith } from '../../../ledger/small-journal.ts';

const { record } = journalWith({ journal: `${JOURNAL}copies: { unpriced: { leave-out: [money] }, untimed: { leave-out: [hours] } }\n` }, [
  '2031-03-01',
  'hours: [{ by: rh, on: general, time: 2h }]\nbought: [{ what: A jack, as: tool, on: general, cost: 20.00 }]',
]);

test('a book of what takes no time has no nought of hours, in a copy without money too, and one without hours has none at all', () => {
  const told = (copy: typeof record, book: string) => {
    const sheet = sheetOf({ ...copy, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') }, 'ledger/entries.html');
    return hoursTold(sheet, bookPage(sheet, book).totals);
  };
  const unpriced = copyOf(record, 'unpriced');
  expect([told(unpriced, 'kind-labour'), told(unpriced, 'kind-tool'), told(record, 'kind-tool')]).toEqual(['2 h', null, null]);
  expect(told(copyOf(record, 'untimed'), 'kind-tool')).toBeNull();
});
