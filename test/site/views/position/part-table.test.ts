import { expect, test } from 'vitest';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { PAGES } from '../../../../src/site/addresses.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { partTable } from '../../../../src/site/views/position/part-table.ts';
import { did, evening, part, placeAt, soundRecord } from '../../../builders/journal.ts';

test('the list of parts says what is believed of each by the record’s day, and the marks that a note found', () => {
  const believed = (id: string, origin: 'original' | 'earlier-replacement', date: string) => ({
    part: id,
    origin,
    by: null,
    because: 'its rim is pressed',
    paper: null,
    session: `${date}-work`,
    date,
    place: placeAt('sessions/note.md'),
  });
  const date = '2030-10-10';
  const record = soundRecord({
    parts: [part('lamp'), part('lamp-sale', { for: 'lamp', origin: 'unknown', store: 'loft' })],
    evenings: [
      evening(date, {
        parts: [did('lamp-sale', 'inspected', { marks: 'K 2' })],
        attributed: [believed('lamp', 'earlier-replacement', date), believed('lamp-sale', 'original', date)],
      }),
    ],
  });
  const site = { ...record, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') };
  const sheet = sheetOf(site, PAGES.parts);
  const { markup } = partTable(sheet, [...record.journal.positions.values()], 'Parts');
  const cells = [...markup.matchAll(/<td[^>]*>(.*?)<\/td>/g)].map(([, cell]) => cell?.replaceAll(/<[^>]+>/g, ''));
  expect(cells).toEqual(['earlier replacement', 'on the vehicle', '', 'original', 'in stores: loft', 'K 2']);
});
