import { fileURLToPath } from 'node:url';
import * as fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { copyOf } from '../../../../src/journal/copy/copy.ts';
import type { IsoDate } from '../../../../src/journal/model.ts';
import { compileJournal, nothingMade } from '../../../../src/journal/pipeline.ts';
import type { Sources } from '../../../../src/journal/read/source/sources.ts';
import type { JournalRecord } from '../../../../src/journal/record.ts';
import { addDays } from '../../../../src/journal/values/date.ts';
import { loadJournal } from '../../../../src/load/load.ts';
import { carriedJournal, recordCarried } from '../../../../src/site/views/any-day/carried-journal.ts';
import { daySetter } from '../../../../src/site/views/any-day/day-shown.ts';
import { type Packed, packed, unpacked } from '../../../../src/site/views/any-day/pack.ts';
import { workshopFiles, workshops } from '../../../arbitraries/workshop.ts';

const DEMO = loadJournal(fileURLToPath(new URL('../../../../content', import.meta.url)));

/** Each note is read once; what is compared follows from what was read. */
const READ = nothingMade();

function compiled(sources: Sources, to: IsoDate | null = null): JournalRecord {
  const { record } = compileJournal(sources, { today: '2035-12-31', to, before: READ });
  if (record === null) throw new Error('it does not compile');
  return record;
}

/** The record as a browser has it: through the text of a script. */
const inBrowser = (record: JournalRecord): JournalRecord => recordCarried(JSON.parse(JSON.stringify(carriedJournal(record))) as Packed);

/** What is set for a day, a line for each element, so that a difference is told by itself. */
function linesOf(record: JournalRecord): (day: IsoDate) => string[] {
  const set = daySetter(record);
  return (day) => {
    const { title, markup } = set(day);
    return [title, ...markup.split(/(?=<(?:tr|li|h2|h3|p|figure)\b)/)];
  };
}

function same(lines: readonly string[], others: readonly string[]): void {
  expect(lines.filter((line) => !others.includes(line))).toEqual(others.filter((line) => !lines.includes(line)));
  expect(lines.length).toBe(others.length);
}

function sourcesOf(files: Readonly<Record<string, string>>): Sources {
  const encoder = new TextEncoder();
  return { files: Object.entries(files).map(([path, text]) => ({ path, bytes: encoder.encode(text) })), assets: [], problems: [] };
}

describe('any day, as a browser works it out', () => {
  test.each(['workshop', 'public'])('the %s copy of the demo stands as the notes up to that day have it', (copy) => {
    const whole = copyOf(compiled(DEMO), copy);
    const lines = linesOf(inBrowser(whole));
    const days = whole.journal.sessions.filter((_, n) => n % 9 === 0).map(({ date }, n) => addDays(date, n % 3));
    expect(days.length).toBeGreaterThan(5);
    for (const day of days) same(lines(day), linesOf(copyOf(compiled(DEMO, day), copy))(day));
  });

  test('and so do generated journals, on every day of a note', () => {
    for (const of of fc.sample(workshops(16), { numRuns: 12, seed: 7 })) {
      const sources = sourcesOf(workshopFiles(of));
      const lines = linesOf(inBrowser(compiled(sources)));
      for (const { date } of of.notes) same(lines(date), linesOf(compiled(sources, date))(date));
    }
  });

  test('paid and job cost meet on a day on which nothing was booked yet, as on the page of the ledger of that day', () => {
    const files = {
      'journal.yaml': 'title: A van\narrived: 2031-03-01\ncurrency: GBP\nsubsystems: { brakes: Brakes }\n',
      'consumables.yaml': 'grease: { name: Grease, unit: kg, opening: { amount: 1 kg, value: 9.00 } }\n',
      'sessions/2031-03-02.md': '---\ndate: 2031-03-02\ntitle: An evening\n---\nCold.\n',
    };
    const { markup } = daySetter(inBrowser(compiled(sourcesOf(files))))('2031-03-02');
    expect(markup.replaceAll(/<[^>]*>/g, ' ')).toMatch(/Opening stock\s+£9\.00[\s\S]*Total\s+£9\.00\s+Total\s+£9\.00/);
  });

  test('what goes along has nothing of prose, pictures, methods or the client', () => {
    const { journal } = compiled(DEMO);
    const text = JSON.stringify(carriedJournal(compiled(DEMO)));
    const kept = [
      ...journal.sessions.map(({ body }) => body.trim().split('\n')[0]?.slice(0, 60)),
      ...journal.sessions.flatMap(({ pictures }) => pictures.map(({ caption }) => caption)),
      ...journal.sessions.flatMap(({ methods }) => methods.map(({ how }) => how)),
      ...[...journal.parts.values()].map(({ evidence }) => evidence),
      journal.settings.client.address,
    ].filter((one): one is string => typeof one === 'string' && one.length > 30);
    expect(kept.length).toBeGreaterThan(100);
    expect(kept.filter((one) => text.includes(JSON.stringify(one).slice(1, -1)))).toEqual([]);
  });
});

describe('packing', () => {
  const data = fc.letrec((tie) => ({
    value: fc.oneof(
      { depthSize: 'small' },
      fc.string(),
      fc.integer(),
      fc.boolean(),
      fc.constantFrom(null, undefined),
      fc.bigInt(),
      fc.array(tie('value')),
      fc.dictionary(fc.string(), tie('value'), { noNullPrototype: true }),
      fc.array(fc.tuple(fc.string(), tie('value'))).map((entries) => new Map(entries)),
      fc.uniqueArray(fc.string()).map((entries) => new Set(entries)),
    ),
  })).value;

  test('gives back what was packed, through the text of a script', () => {
    fc.assert(
      fc.property(data, (one) => {
        expect(unpacked(JSON.parse(JSON.stringify(packed(one))) as Packed)).toEqual(one);
      }),
    );
  });

  test.each([[[{ '': 1 }, {}]], [[{ 'a\nb': 1 }, { a: 1, b: 2 }]]])(
    'fields of no name, and of names over two lines, are no others',
    (one) => {
      expect(unpacked(packed(one))).toEqual(one);
    },
  );

  test('keeps fractions exact, and refuses what is no data', () => {
    expect((unpacked(packed([new Fraction('453.592').div(3)])) as Fraction[])[0]?.equals(new Fraction('453.592').div(3))).toBe(true);
    expect(() => packed({ a: () => 1 })).toThrow('a function is no data');
  });
});
