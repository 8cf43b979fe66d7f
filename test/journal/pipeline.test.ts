import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { compileJournal } from '../../src/journal/pipeline.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { loadJournal } from '../../src/load/load.ts';

const DEMO = loadJournal(fileURLToPath(new URL('../../content', import.meta.url)));
const TODAY = '2026-11-25';

function demo(files = DEMO.files): JournalRecord {
  const { record } = compileJournal({ ...DEMO, files }, { today: TODAY });
  if (record === null) throw new Error('the demo does not compile');
  return record;
}

/** The record as text, so that two can be compared to the byte. */
function flat(record: JournalRecord): string {
  return JSON.stringify(record, (_, value: unknown) => {
    if (value instanceof Map) return [...value].sort(([a], [b]) => (String(a) < String(b) ? -1 : 1));
    return typeof value === 'bigint' ? String(value) : value;
  });
}

test('the demo has no errors, and exactly the warnings it means to show', () => {
  const { diagnostics } = compileJournal(DEMO, { today: TODAY });
  expect(diagnostics.map((each) => `${each.severity} ${each.code}`).sort()).toEqual(['warning A701', 'warning A904']);
});

test('a part that names no weight weighs exactly one', () => {
  const { journal } = demo();
  const weights = [...journal.parts.values(), ...journal.positions.values()].map(({ weight }) => weight);
  expect(weights.filter((weight) => !(weight instanceof Fraction))).toEqual([]);
  expect(weights.filter((weight) => weight.equals(1)).length).toBeGreaterThan(100);
});

test('the order in which files are read changes nothing', () => {
  const expected = flat(demo());
  fc.assert(
    fc.property(fc.shuffledSubarray([...DEMO.files], { minLength: DEMO.files.length }), (files) => {
      expect(flat(demo(files))).toBe(expected);
    }),
    { numRuns: 6 },
  );
});

test('the counts of a part over its whereabouts add up to its count at every moment', () => {
  const record = demo();
  const dates = [record.journal.settings.arrived, ...record.journal.sessions.map((session) => session.date)];
  for (const [id, stays] of record.history.stays) {
    for (const date of dates) {
      const here = stays.filter((stay) => stay.from.date <= date && (stay.to === null || stay.to.date > date));
      const sum = here.reduce((all, stay) => all + stay.count, 0);
      expect([id, date, sum]).toEqual([id, date, record.journal.parts.get(id)?.count]);
    }
  }
});

describe('totals agree over every grouping', () => {
  const { entries } = demo().ledger;
  const total = entries.reduce((sum, entry) => sum + entry.gross, 0);
  test.each(['subsystem', 'session', 'kind', 'person', 'position', 'date'] as const)('by %s', (key) => {
    const groups = new Map<unknown, number>();
    for (const entry of entries) groups.set(entry[key], (groups.get(entry[key]) ?? 0) + entry.gross);
    expect([...groups.values()].reduce((sum, each) => sum + each, 0)).toBe(total);
    expect(groups.size).toBeGreaterThan(1);
  });
  test('and every entry is its net and its tax', () => {
    expect(entries.filter((entry) => entry.gross !== entry.net + entry.tax)).toEqual([]);
  });
});

/** A journal of the cases uses it: the van of the demo stays with its keeper. */
const ELSEWHERE = new Map([['handed-over', '../cases/the-vehicle-changes-hands/journal/sessions/2031-03-01-sold.md']]);

test('the demo uses every field of a note at least once, but for what has no place in its story', () => {
  const schema = readFileSync(new URL('../../src/journal/schema/session.ts', import.meta.url), 'utf8');
  const top = schema.slice(schema.indexOf('export const sessionSchema'));
  const names = [...top.matchAll(/^ {2}'?([a-z-]+)'?[:,]/gm)].map((match) => match[1] ?? '');
  expect(names.length).toBeGreaterThan(20);
  const demo = DEMO.files.map((file) => new TextDecoder().decode(file.bytes)).join('\n');
  const textFor = (name: string): string => {
    const other = ELSEWHERE.get(name);
    return other === undefined ? demo : readFileSync(new URL(other, import.meta.url), 'utf8');
  };
  expect(names.filter((name) => !new RegExp(`^${name}:`, 'm').test(textFor(name)))).toEqual([]);
});
