/** What the book says was done to a part, and what the page of its position says of the same. */
import { describe, expect, test } from 'vitest';
import { deedText } from '../../src/book/deeds.ts';
import { lives, register } from '../../src/book/register-chapters.ts';
import type { BookSetting } from '../../src/book/setting.ts';
import { NO_PICTURES } from '../../src/photos/plan.ts';
import type { SiteRecord } from '../../src/site/record.ts';
import { sheetOf } from '../../src/site/views/page/sheet.ts';
import { positionPage } from '../../src/site/views/position/position-page.ts';
import { decide, did, evening, part, soundRecord } from '../builders/journal.ts';

const OF = soundRecord({
  parts: [part('pins', { name: 'Cotter pins', count: 2, numbered: 'near, off' })],
  evenings: [
    evening('2030-10-01', { parts: [did('pins', 'removed', { to: 'bag 3' })] }),
    evening('2030-10-02', { parts: [did('pins', 'gone', { how: 'lost', which: [2], note: 'Through the floor' })] }),
  ],
});
const record = { ...OF, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord;
const sheet = sheetOf(record, 'x.html');

describe('how a part went', () => {
  const entry = OF.journal.sessions[1]?.parts[0];

  test('stands in the book, with which of a lot', () => {
    const setting = { sheet, record, named: new Set() } as unknown as BookSetting;
    expect(entry && deedText(setting, entry)).toContain('Cotter pins: gone. Number 2. Lost. Through the floor.');
  });

  test('is told once on the page of the position', () => {
    const lines = positionPage(sheet, 'pins').chronicle.flatMap((day) => day.lines.map(({ markup }) => markup.replaceAll(/<[^>]*>/g, '')));
    expect(lines).toContain('Cotter pins (1 of 2): gone; lost. Through the floor. Number 2.');
  });
});

test('what stood at a place that takes several is told by how many', () => {
  const lot = soundRecord({
    parts: [part('pins', { name: 'Cotter pins', count: 2 }), part('pin-new', { name: 'New pin', count: 1, for: 'pins' })],
    evenings: [
      evening('2030-10-01', { parts: [did('pins', 'removed', { count: 1, to: 'bag 3' })] }),
      evening('2030-10-02', { parts: [did('pin-new', 'fitted')] }),
    ],
  });
  const all = { ...lot, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord;
  const set = lives({ sheet: sheetOf(all, 'x.html'), record: all, named: new Set() } as unknown as BookSetting);
  expect(set).toMatch(/As found, [a-z ]+, 2, then 1 of 2/);
  expect(set).toMatch(/New pin \([a-z ]+\), 1 of 2/);
});

test('a decision that was taken again for some of a lot is said to hold for the rest', () => {
  const lot = soundRecord({
    parts: [part('pins', { name: 'Cotter pins', count: 4 }), part('drum')],
    evenings: [
      evening('2030-10-01', {
        decisions: [decide('pins', 'keep', { because: 'Sound.' }), decide('drum', 'keep', { because: 'Sound too.' })],
      }),
      evening('2030-10-02', { decisions: [decide('pins', 'replace', { count: 1, because: 'Sheared.' }), decide('drum', 'repair')] }),
    ],
  });
  const all = { ...lot, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord;
  const set = lives({ sheet: sheetOf(all, 'x.html'), record: all, named: new Set() } as unknown as BookSetting);
  const later = [...set.matchAll(/because: \[(?:#"([^"]*)";)?\], later: \[(?:#"([^"]*)";)?\]/g)].map(([, because, said = '']) => [
    because,
    said,
  ]);
  expect(later.slice(0, 3)).toEqual([
    ['Sound.', 'later decided again for 1 of 4'],
    ['Sheared.', ''],
    ['Sound too.', 'later decided again'],
  ]);
});

test('only what was found there is told as found; other parts by their names, with their origin in brackets', () => {
  const of = soundRecord({
    parts: [
      part('flasher', { name: 'Flasher', origin: 'new', acquired: '2030-10-01' }),
      part('plate', { name: 'Plate, nearside', found: 'missing' }),
      part('hose', { name: 'Hose' }),
      part('hose-new', { name: 'Hose, new', origin: 'new', for: 'hose', store: 'loft' }),
    ],
    evenings: [
      evening('2030-10-02', {
        parts: [did('flasher', 'fitted'), did('plate', ['acquired', 'fitted']), did('hose', 'removed'), did('hose-new', 'fitted')],
        decisions: [decide('flasher', 'repair'), decide('plate', 'repair')],
      }),
    ],
  });
  const all = { ...of, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord;
  const setting = { sheet: sheetOf(all, 'x.html'), record: all, named: new Set() } as unknown as BookSetting;
  const stood = [...lives(setting).matchAll(/what: \[#"([^"]*)";\]/g)].map(([, words]) => words);
  expect(stood).toEqual(expect.arrayContaining(['Flasher (new)', 'Plate, nearside (original)', 'As found, original', 'Hose, new (new)']));
  expect(stood.filter((words) => words?.startsWith('As found'))).toHaveLength(1);
  expect(register(setting)).toContain('new (Hose, new)');
});
