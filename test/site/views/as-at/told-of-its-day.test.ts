/** What a page of a past day tells of bags and items is of that day, not of the day on which the record stands. */
import { expect, test } from 'vitest';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { itemList } from '../../../../src/site/views/items/item-list.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { bagWords } from '../../../../src/site/views/stores/bag-entry.ts';
import { storesThen } from '../../../../src/site/views/stores/stores-page.ts';
import { did, evening, part, soundRecord } from '../../../builders/journal.ts';

const OF = soundRecord({
  parts: [part('spring', { hazards: ['stored-energy'] })],
  evenings: [
    evening('2030-10-01', {
      bags: [{ bag: 3, holds: ['a spring'] }],
      parts: [did('spring', 'removed', { to: 'bag 3' })],
      opens: [{ id: 'rim', kind: 'waiting', what: 'Rim at the plater', due: '2030-11-20' }],
    }),
    evening('2030-12-01', { parts: [did('spring', 'cleaned', { how: 'made-safe' })] }),
  ],
});
const sheet = sheetOf({ ...OF, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord, 'as-at/x.html');
const { bags, items } = storesThen(sheet, '2030-10-31');
const bag = bags[0];

test('a promise that was still to come on a past day is not told as past', () => {
  expect(itemList(sheet, items, { at: '2030-10-31' }).markup).not.toContain('which is past');
  expect(itemList(sheet, items).markup).toContain('which is past');
});

test('a bag carries the hazard that what it held had on a past day, though it was made safe later', () => {
  if (bag === undefined) throw new Error('no bag was filled');
  expect(bagWords(sheet, bag, '2030-10-31').markup).toContain('Caution: ');
  expect(bagWords(sheet, bag).markup).not.toContain('Caution');
});
