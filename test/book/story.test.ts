/** What the book tells of an evening under its prose. */
import { expect, test } from 'vitest';
import type { BookSetting } from '../../src/book/setting.ts';
import { story } from '../../src/book/story.ts';
import { threads } from '../../src/book/threads.ts';
import { NO_PICTURES } from '../../src/photos/plan.ts';
import type { SiteRecord } from '../../src/site/record.ts';
import { sheetOf } from '../../src/site/views/page/sheet.ts';
import { JOURNAL, journal, journalWith } from '../ledger/small-journal.ts';

test('a milestone that was reached is told with what was still open and why that was passed over, as on the page of the evening', () => {
  const { record, problems } = journal(
    ['2031-03-01', 'opens: [{ id: cap, kind: temporary, what: Pipe capped, before: stripped, on: brakes }]'],
    ['2031-03-02', 'reached: [{ milestone: stripped, with-open: [cap], because: the cap stays until the axle is back }]'],
  );
  expect(problems).toEqual([]);
  const site = { ...record, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord;
  const setting = { sheet: sheetOf(site, 'x.html'), record: site, named: new Set(), floats: true } as BookSetting;
  const told = story(setting).map(({ source }) => source);
  expect(told.at(-1)).toContain('Milestone reached: Stripped, with these still open: Pipe capped. The cap stays until the axle is back.');
  expect(told[0]).not.toContain('Milestone reached');
});

test('of a note that another puts right both say so', () => {
  const { record, problems } = journal(
    ['2031-03-01', 'parts: [{ part: drum, did: removed, to: shelf }]'],
    ['2031-03-02', 'corrects: 2031-03-01-0'],
  );
  expect(problems).toEqual([]);
  const site = { ...record, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord;
  const setting = { sheet: sheetOf(site, 'x.html'), record: site, named: new Set(), floats: true } as BookSetting;
  const [wrong, right] = story(setting).map(({ source }) => source);
  expect(wrong).toContain('Something here was wrong, and is put right on 2 March 2031.');
  expect(right).toContain('Puts right what was written on 1 March 2031.');
});

test('a decision on some of a lot says of how many, and which, in the story and in a thread', () => {
  const { record, problems } = journalWith(
    {
      journal: `${JOURNAL}threads: { spokes: { title: Spokes, parts: [spokes] } }\n`,
      parts:
        '- { id: spokes, name: Spokes, origin: original, count: 6, numbered: 1 to 6 }\n- { id: spokes-new, name: New spokes, origin: made, for: spokes, count: 6 }\n',
    },
    ['2031-03-01', 'decisions: [{ part: spokes, verdict: replace, with: spokes-new, which: [3, 4], because: split }]'],
    ['2031-03-02', 'decisions: [{ part: spokes, verdict: keep, because: sound }]'],
  );
  expect(problems).toEqual([]);
  const site = { ...record, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord;
  const setting = { sheet: sheetOf(site, 'x.html'), record: site, named: new Set(), floats: true } as BookSetting;
  const told = [story(setting).map(({ source }) => source), threads(setting)].map(String);
  for (const one of told) {
    expect(one).toContain('Spokes: replace (2 of 6, numbers 3 and 4) with New spokes.');
    expect(one).toContain('Spokes: keep as it is.');
  }
});
