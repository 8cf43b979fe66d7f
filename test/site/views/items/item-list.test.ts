import { expect, test } from 'vitest';
import { itemsAt, openItemsAt } from '../../../../src/journal/registers/open-items.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { PAGES } from '../../../../src/site/addresses.ts';
import { itemList } from '../../../../src/site/views/items/item-list.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { journal } from '../../../ledger/small-journal.ts';

const OPENS = `opens:
  - { id: canvas, kind: buy, what: Canvas, price: 120.00, hours: 12h }
  - { id: tap, kind: temporary, what: Tap, price: 2.00 }
  - { id: rim, kind: waiting, what: Rim, hours: 30m }
  - { id: look, kind: question, what: Which way }`;

test('an item shows its price and its hours, of whatever kind it is', () => {
  const { record } = journal(['2031-03-02', OPENS]);
  const sheet = sheetOf({ ...record, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') }, PAGES.items);
  const shown = itemList(sheet, openItemsAt(record, null)).markup;
  expect(shown.match(/, about [^.]*(?:\.\d\d)?[^.]*\. Opened/g)).toEqual([
    ', about £120.00 and 12 h. Opened',
    ', about £2.00. Opened',
    ', about 30 min. Opened',
  ]);
});

test('how an item was closed begins as a sentence does', () => {
  const { record } = journal(['2031-03-02', OPENS], ['2031-03-03', 'closes: { id: tap, how: a new washer }']);
  const sheet = sheetOf({ ...record, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') }, PAGES.items);
  expect(itemList(sheet, itemsAt(record, null)).markup).toContain('after 1 day. A new washer.');
});
