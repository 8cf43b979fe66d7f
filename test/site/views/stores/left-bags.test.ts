/** A bag from which all has gone, though no note says that it was emptied, is told as that: no part is in two places. */
import { describe, expect, test } from 'vitest';
import { openMatters } from '../../../../src/cli/new-note/open-matters.ts';
import { thingsOf } from '../../../../src/editor/things.ts';
import { labelsOf } from '../../../../src/exports/labels.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import type { SiteRecord } from '../../../../src/site/record.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { bagsCounted, bagWords } from '../../../../src/site/views/stores/bag-entry.ts';
import { bagTable } from '../../../../src/site/views/stores/bag-table.ts';
import { storesThen } from '../../../../src/site/views/stores/stores-page.ts';
import { did, evening, part, soundRecord } from '../../../builders/journal.ts';

const OF = soundRecord({
  parts: [part('lamp-brackets', { name: 'Lamp brackets', count: 2 }), part('spring', { name: 'Spring' })],
  stores: ['shelf'],
  evenings: [
    evening('2030-10-01', {
      bags: [
        { bag: 2, holds: ['2 lamp brackets'] },
        { bag: 3, holds: ['a spring', '2 nuts'] },
      ],
      parts: [did('lamp-brackets', 'removed', { to: 'bag 2' }), did('spring', 'removed', { to: 'bag 3' })],
    }),
    evening('2030-11-01', { parts: [did('lamp-brackets', 'stored', { to: 'shelf', count: 1 })] }),
    evening('2030-12-01', {
      parts: [did('lamp-brackets', 'sent-out', { to: 'a painter', from: 'bag 2', count: 1 }), did('spring', 'stored', { to: 'shelf' })],
    }),
  ],
});
const sheet = sheetOf({ ...OF, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord, 'x.html');
const plain = (markup: string) => markup.replaceAll(/<[^>]*>/g, '');
const onDay = (day: string) => storesThen(sheet, day).bags;

describe('what has gone from a bag since', () => {
  test('is told in its row of the stores and with the bag', () => {
    const said = /Lamp brackets: gone elsewhere since; no note says that the bag was emptied\./;
    expect(plain(bagTable(sheet, onDay('2030-12-31'), 'x').markup)).toMatch(said);
    const [two] = onDay('2030-12-31');
    expect(two && plain(bagWords(sheet, two).markup)).toMatch(said);
  });

  test('is told by how many while some of it is there, and then the bag is not empty', () => {
    const words = plain(bagTable(sheet, onDay('2030-11-15'), 'x').markup);
    expect(words).toContain('Lamp brackets (1 of 2): gone elsewhere since.');
    expect(words).not.toContain('no note says');
  });

  test('of a numbered lot says which, with the bag, on its label and in the next note', () => {
    const pins = soundRecord({
      parts: [part('pins', { name: 'Cotter pins', count: 2, numbered: 'near, off' })],
      evenings: [
        evening('2030-10-01', { parts: [did('pins', 'removed', { to: 'bag 3' })] }),
        evening('2030-10-02', { parts: [did('pins', 'gone', { how: 'lost', which: [2] })] }),
      ],
    });
    const of = sheetOf({ ...pins, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord, 'x.html');
    const [three] = storesThen(of, '2030-10-02').bags;
    const words = plain(three ? bagWords(of, three).markup : '');
    expect(words).toContain('With these parts of the catalogue: Cotter pins (number 2) until taken out, Cotter pins (number 1).');
    expect(words).toContain('Cotter pins (1 of 2, number 2): gone elsewhere since.');
    expect(labelsOf(pins, [3], String)[0]?.left).toEqual(['Cotter pins (1 of 2, number 2)']);
    expect(openMatters(pins)).toContain('#   3: 2 Cotter pins (2030-10-01); pins (1 of 2, number 2) gone elsewhere since');
  });

  test('of a lot that left in two steps is told once', () => {
    const words = plain(onDay('2030-12-31')[0] ? bagWords(sheet, onDay('2030-12-31')[0] as never).markup : '');
    expect(words).toContain('With these parts of the catalogue: Lamp brackets (2) until taken out.');
    const some = plain(onDay('2030-11-15')[0] ? bagWords(sheet, onDay('2030-11-15')[0] as never).markup : '');
    expect(some).toContain('Lamp brackets (1) until taken out, Lamp brackets (1).');
  });

  test('is told of a bag that holds something else besides, without a word on its emptying', () => {
    const three = onDay('2030-12-31').find(({ bag }) => bag === 3);
    const words = plain(three ? bagWords(sheet, three).markup : '');
    expect(words).toContain('Spring: gone elsewhere since.');
    expect(words).not.toContain('no note says');
  });
});

test('the next note and completion say it too', () => {
  const said = openMatters(OF).filter((line) => /^# {3}[23]:/.test(line));
  expect(said).toEqual([
    '#   2: 2 lamp brackets (2030-10-01); lamp-brackets gone elsewhere since, not noted as emptied: `emptied: [2]`',
    '#   3: a spring, 2 nuts (2030-10-01); spring gone elsewhere since',
  ]);
  const bags = thingsOf(OF).filter(({ sort }) => sort === 'bag');
  expect(bags.map(({ now }) => now)).toEqual([
    'filled 2030-10-01, lamp-brackets gone elsewhere since, not noted as emptied',
    'filled 2030-10-01, spring gone elsewhere since',
  ]);
});

describe('bags that the record began with, and bags that were filled again', () => {
  const again = soundRecord({
    parts: [part('pins', { name: 'Pins', count: 2, found: 'loose', bag: 3 })],
    stores: ['shelf'],
    evenings: [
      evening('2030-10-01', { emptied: [3], parts: [did('pins', 'stored', { to: 'shelf' })] }),
      evening('2030-10-02', { bags: [{ bag: 3, holds: ['a washer'] }] }),
    ],
  });
  const of = sheetOf({ ...again, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord, 'x.html');

  test('a bag that was full when the record began is there as found, and not since the day the vehicle came', () => {
    expect(plain(bagTable(of, storesThen(of, '2030-09-30').bags, 'x').markup)).toContain('as found');
    const [three] = storesThen(of, '2030-10-02').bags;
    expect(three && plain(bagWords(of, three).markup)).toContain('Before that the same number held Pins, as found to 1 October 2030.');
  });

  test('the page counts those that lie emptied now', () => {
    expect([bagsCounted(2, 0), bagsCounted(1, 1), bagsCounted(0, 2)]).toEqual([
      '2 bags filled, none lies emptied',
      '1 bag filled, 1 lies emptied',
      'No bags filled, 2 lie emptied',
    ]);
  });
});

test('what a bag holds is told apart where one thing has a comma of its own', () => {
  const holding = (...holds: string[]) =>
    soundRecord({ parts: [part('drum')], evenings: [evening('2030-10-01', { bags: [{ bag: 2, holds }] })] });
  const saidOf = (of: ReturnType<typeof holding>) => {
    const shown = sheetOf({ ...of, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' } as unknown as SiteRecord, 'x.html');
    const bags = storesThen(shown, '2030-10-01').bags;
    return [plain(bagTable(shown, bags, 'x').markup), ...bags.map((bag) => plain(bagWords(shown, bag).markup)), openMatters(of).join(' ')];
  };
  for (const said of saidOf(holding('2 studs, long', '3 nuts'))) expect(said).toContain('2 studs, long; 3 nuts');
  for (const said of saidOf(holding('2 studs', '3 nuts'))) expect(said).toContain('2 studs, 3 nuts');
});
