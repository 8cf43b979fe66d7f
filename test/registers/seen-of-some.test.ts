/** What was seen of some of a lot is told of those, never of the others. */
import { expect, test } from 'vitest';
import { marksOf, notedSince } from '../../src/journal/registers/observations.ts';
import { journalWith, type NoteOf } from '../ledger/small-journal.ts';

function told(lot: string, ...notes: readonly NoteOf[]) {
  const { record, problems } = journalWith({ parts: `- { id: lot, name: Lot, origin: original, marks: S on each, ${lot} }\n` }, ...notes);
  expect(problems).toEqual([]);
  return {
    marks: (of?: readonly number[]) => marksOf(record, 'lot', of ?? null),
    since: notedSince(record, 'lot').flatMap(({ list }) => list.map(({ words }) => words)),
  };
}

const off = (some: string): NoteOf => ['2031-03-01', `parts: [{ part: lot, did: removed, ${some} marks: K 3, finish: black }]`];
const seenAll: NoteOf = ['2031-03-02', 'parts: [{ part: lot, did: inspected, marks: W }]'];

test('of a numbered lot the marks of those named, and of one that goes out its own alone', () => {
  const { marks, since } = told('count: 6, numbered: 1 to 6', off('which: [3, 4],'), seenAll);
  expect(marks()).toEqual(['S on each', 'K 3 (2 of 6, numbers 3 and 4)', 'W']);
  expect(marks([6])).toEqual(['S on each', 'W']);
  expect(marks([4])).toEqual(['S on each', 'K 3', 'W']);
  expect(marks([4, 5])).toEqual(['S on each', 'K 3 (1 of 2, number 4)', 'W']);
  expect(since).toEqual(['K 3 (2 of 6, numbers 3 and 4)', 'W', 'black (2 of 6, numbers 3 and 4)']);
});

test('of a lot that is only counted, of how many; of all, and of a single part, nothing more', () => {
  expect(told('count: 4', off('count: 2,')).marks()).toEqual(['S on each', 'K 3 (2 of 4)']);
  expect(told('count: 4', off('')).since).toEqual(['K 3', 'black']);
  expect(told('count: 1', off('')).marks()).toEqual(['S on each', 'K 3']);
});
