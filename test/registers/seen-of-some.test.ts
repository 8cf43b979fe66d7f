/** What was seen of some of a lot is told of those, never of the others. */
import { expect, test } from 'vitest';
import { notConfirmedAt, waysBackOf } from '../../src/journal/registers/goes-back.ts';
import { marksOf, notedSince } from '../../src/journal/registers/observations.ts';
import { journalWith, type NoteOf } from '../ledger/small-journal.ts';

function told(lot: string, ...notes: readonly NoteOf[]) {
  const { record, problems } = journalWith({ parts: `- { id: lot, name: Lot, origin: original, marks: S on each, ${lot} }\n` }, ...notes);
  expect(problems).toEqual([]);
  return {
    marks: (of?: readonly number[]) => marksOf(record, 'lot', of ?? null),
    ways: waysBackOf(record, 'lot', null).map(({ goesBack, some }) => [goesBack, some]),
    unsaid: notConfirmedAt(record, null).map(({ fitted }) => fitted.date),
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

const bare = (some: string): NoteOf => ['2031-03-01', `parts: [{ part: lot, did: removed, ${some} goes-back: long end out }]`];
const refitted = (date: string, some: string): NoteOf => [date, `parts: [{ part: lot, did: fitted, ${some} }]`];
const SIX = 'count: 6, numbered: 1 to 6';

test('how some of a lot go back is told of those', () => {
  expect(told(SIX, bare('which: [3, 4],')).ways).toEqual([['long end out', '2 of 6, numbers 3 and 4']]);
  expect(told('count: 4', bare('count: 2,')).ways).toEqual([['long end out', '2 of 4']]);
  expect(told('count: 4', bare('')).ways).toEqual([['long end out', '']]);
});

test('that one of them went back as it was says nothing of another that went back before it', () => {
  const one = refitted('2031-03-03', 'which: [3]');
  const other = refitted('2031-03-05', 'which: [4], as-was: yes');
  expect(told(SIX, bare('which: [3, 4],'), one, other).unsaid).toEqual(['2031-03-03']);
  expect(
    told('count: 4', bare('count: 2,'), refitted('2031-03-03', 'count: 1'), refitted('2031-03-05', 'count: 1, as-was: yes')).unsaid,
  ).toEqual(['2031-03-03']);
  const off: NoteOf = ['2031-03-06', 'parts: [{ part: lot, did: removed, which: [3] }]'];
  expect(told(SIX, bare('which: [3, 4],'), one, other, off).unsaid).toEqual([]);
  expect(told(SIX, bare('which: [3, 4],'), one, other, off, refitted('2031-03-07', 'which: [3], as-was: no, note: turned')).unsaid).toEqual(
    [],
  );
  expect(
    told(SIX, bare('which: [4],'), one.with(1, 'parts: [{ part: lot, did: [removed, fitted], which: [3] }]') as unknown as NoteOf, other)
      .unsaid,
  ).toEqual([]);
});
