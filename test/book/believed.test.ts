/** What the book and a buyer's sheet say of origins that somebody came to believe otherwise, and of who wrote. */
import { describe, expect, test } from 'vitest';
import { howToRead, titlePage } from '../../src/book/opening.ts';
import { departures } from '../../src/book/register-chapters.ts';
import { type BookSetting, settingOf } from '../../src/book/setting.ts';
import { buyerSheet } from '../../src/book/sheets/buyer.ts';
import { inspectorSheet } from '../../src/book/sheets/inspector.ts';
import { story } from '../../src/book/story.ts';
import { NO_PICTURES } from '../../src/photos/plan.ts';
import { JOURNAL, journalWith, type NoteOf } from '../ledger/small-journal.ts';

const PARTS = `- { id: lamp, name: Lamp, origin: original, marks: K 1 }
- { id: lamp-sale, name: Lamp from a sale, origin: unknown, for: lamp, at: shelf }
`;
const PEOPLE = JOURNAL.replace('people:\n', 'people:\n  lm: A lamp maker\n');

function setting(...later: readonly NoteOf[]): BookSetting {
  const { record, problems } = journalWith(
    { journal: PEOPLE, parts: PARTS },
    [
      '2031-03-01',
      `hours: [{ by: jm, on: brakes, time: 1h }]
parts: [{ part: lamp, did: [removed, gone], how: given, to: a friend }, { part: lamp-sale, did: fitted, marks: K 2 }]
attributed: [{ part: lamp, origin: earlier-replacement, by: lm, because: its rim is pressed }, { part: lamp-sale, origin: original, because: numbered in the same hand }]`,
    ],
    ...later,
  );
  expect(problems).toEqual([]);
  return settingOf({ ...record, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' });
}

/** Typst source as it reads. */
const read = (source: string): string => source.replaceAll(/#"((?:[^"\\]|\\.)*)";?/g, '$1').replaceAll(/\s+/g, ' ');

describe('what was believed anew', () => {
  test('is the evidence of the part that stands there, never that of the one that stood there before', () => {
    const sheet = read(buyerSheet(setting()).parts.join(' '));
    expect(sheet).toContain('Numbered in the same hand. Marks: K 2.');
    expect(sheet).not.toMatch(/rim is pressed|K 1/i);
  });

  test('is told beside what stands there for an original: how that is known, where nobody decided on it', () => {
    const later: NoteOf = ['2031-03-02', 'attributed: [{ part: lamp-sale, origin: donor, because: its number is filed off }]'];
    const text = read(departures(setting(later)));
    expect(text).toMatch(/Lamp\], \[donor \(Lamp from a sale\)\], \[How it is known: its number is filed off\.\]/);
  });

  test('is told of its evening, with who came to believe it and why', () => {
    const told = read(
      story(setting())
        .map(({ source }) => source)
        .join(' '),
    );
    expect(told).toContain('Lamp: believed by A lamp maker to be an earlier replacement.');
    expect(told).toContain('Its rim is pressed.');
    expect(told).toContain('Lamp from a sale: believed to be original.');
  });

  test('is among the origins that the book explains', () => {
    expect(read(howToRead(setting()))).toContain('Earlier replacement');
  });
});

test('one note, or notes of one day, were written on it and not from it to it', () => {
  expect(read(howToRead(setting()))).toContain('made from one note written on 1 March 2031. Nothing in it');
  expect(read(howToRead(setting(['2031-03-04', 'hours: [{ by: jm, time: 1h }]'])))).toContain(
    'made from two notes written between 1 March 2031 and 4 March 2031, one for each sitting of work.',
  );
  expect(read(inspectorSheet(setting()).parts.join(' '))).toContain('One note, dated, with who worked.');
});

test('whoever only gave an opinion of an origin is not among those who kept and worked on it', () => {
  expect(read(titlePage(setting(), null))).toContain('Kept and worked on by Ruth and Jory');
  const worker: NoteOf = ['2031-03-02', 'attributed: [{ part: lamp-sale, origin: original, by: jm, because: numbered }]'];
  expect(read(titlePage(setting(worker), null))).toContain('Kept and worked on by Ruth and Jory');
});
