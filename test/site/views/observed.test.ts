import { afterEach, expect, test } from 'vitest';
import { notedSince } from '../../../src/journal/registers/observations.ts';
import { OBSERVED, type ObservedField } from '../../../src/journal/registers/observed.ts';
import { positionTimeline } from '../../../src/journal/timelines/timelines.ts';
import { type Quantity, readQuantity } from '../../../src/journal/values/quantity.ts';
import type { PicturePlan } from '../../../src/photos/plan.ts';
import { PAGES } from '../../../src/site/addresses.ts';
import { sheetOf } from '../../../src/site/views/page/sheet.ts';
import { chronicleOf } from '../../../src/site/views/position/chronicle.ts';
import { workTable } from '../../../src/site/views/session/work-table.ts';
import { did, evening, part, soundRecord } from '../../builders/journal.ts';

const table = OBSERVED as ObservedField[];
const asItStands = [...table];
afterEach(() => {
  table.splice(0, table.length, ...asItStands);
});

function quantity(text: string): Quantity {
  const read = readQuantity(text);
  if (!read.ok) throw new Error(read.problem);
  return read.value;
}

/** What the two pages show of one evening's entries on a drum. */
function pagesOf(...entries: Parameters<typeof did>[]) {
  const record = soundRecord({
    parts: [part('drum')],
    evenings: [evening('2031-03-12', { parts: entries.map((entry) => did(...entry)) })],
  });
  const site = { ...record, noteHtml: async () => '', warnings: [], pictures: {} as PicturePlan };
  const sheet = sheetOf(site, PAGES.home);
  const [session] = record.journal.sessions;
  if (!session) throw new Error('no session');
  const days = chronicleOf(sheet, positionTimeline(record, 'drum').events);
  return {
    session: JSON.stringify(workTable(sheet, session.parts)),
    position: days.flatMap(({ lines }) => lines.map(({ markup }) => markup)).join('\n'),
    since: notedSince(record, 'drum').map(({ label, list }) => `${label}: ${list.map(({ words }) => words).join(', ')}`),
  };
}

test('a field that is put into the table of what an entry observes stands on both pages', () => {
  const smell = { label: 'Smell', lasts: true, words: ({ how }) => (how === 'lost' ? null : 'of old oil') } satisfies ObservedField;
  expect(pagesOf(['drum', 'inspected'])).toMatchObject({ since: [] });
  table.push(smell);
  const pages = pagesOf(['drum', 'inspected']);
  expect(pages.session).toContain('Smell: of old oil');
  expect(pages.position).toContain('Smell: of old oil');
  expect(pages.since).toEqual(['Smell: of old oil']);
});

test('everything that an entry can observe stands on both pages', () => {
  const said = { note: 'Scored but sound', condition: 2, marks: 'C 4417', finish: 'bare iron', torque: quantity('45 lbf.ft') } as const;
  const pages = pagesOf(['drum', ['inspected', 'cleaned'], said]);
  for (const words of ['Scored but sound', '2, moderately strong symptoms', 'C 4417', 'bare iron', '45 lbf.ft']) {
    expect(pages.session).toContain(words);
    expect(pages.position).toContain(words);
  }
});

test('a note on a part to which nothing was done stands on the page of its position too', () => {
  expect(pagesOf(['drum', [], { note: 'Rings true' }]).position).toContain('Rings true');
});
