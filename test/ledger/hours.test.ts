/** Hours on the days they were worked. */
import { expect, test } from 'vitest';
import { ledgerAt } from '../../src/journal/ledger/ledger-at.ts';
import { statementOf } from '../../src/journal/ledger/statement.ts';
import { hours, journal, journalWith } from './small-journal.ts';

test('hours over midnight are of the day of their note and at its rate, after midnight too', () => {
  // The rate is 28.00 up to 5 April and 30.00 from the 6th.
  const { record, problems } = journal(['2031-04-05', hours('jm', '22:30-00:30')]);
  expect(problems).toEqual([]);
  expect(record.ledger.entries.map(({ id, date, minutes, gross }) => [id, date, minutes, gross])).toEqual([
    ['2031-04-05-0#hours-1', '2031-04-05', 120, 5600],
  ]);
  expect(statementOf(record, '2030-04-06', '2031-04-05').sum.minutes).toBe(120);
  expect(statementOf(record, '2031-04-06', '2032-04-05').sum.minutes).toBe(0);
});

test('a record, the same asked for by its day, and the books at the end of that day are one, whenever the last evening ended', () => {
  const note = ['2031-03-12', hours('jm', '23:50-00:40')] as const;
  const all = journal(note).record;
  expect(all.day).toBe('2031-03-12');
  const books = [all, journalWith({ to: all.day }, note).record].map((record) => [record.day, ledgerAt(record, all.day).whole]);
  expect(books[0]).toEqual(books[1]);
  // 50 minutes at 28.00 an hour are 23.333….
  expect(ledgerAt(all, all.day).whole).toMatchObject({ minutes: 50, cost: 2333 });
});

test('entries stand in the order of their notes', () => {
  const { record } = journal(
    ['2031-03-12', hours('jm', '23:00-01:00')],
    ['2031-03-12', hours('rh', '1h')],
    ['2031-03-13', hours('rh', '1h')],
  );
  expect(record.ledger.entries.map(({ date, person }) => `${date} ${person}`)).toEqual(['2031-03-12 jm', '2031-03-12 rh', '2031-03-13 rh']);
});

test('a day holds what it has: 25 hours where the clocks go back, and what runs over midnight is not of it', () => {
  const day = (date: string, ...times: string[]) =>
    journal([date, `hours: [${times.map((time) => `{ by: rh, on: brakes, time: ${time} }`).join(', ')}]`]).problems.map((each) =>
      each.slice(0, 4),
    );
  expect(day('2031-10-26', '20h', '5h')).toEqual([]);
  expect(day('2031-10-26', '20h', '5h1m')).toEqual(['A804']);
  expect(day('2031-03-30', '20h', '4h')).toEqual(['A804']);
  expect(day('2031-03-12', '22h', '22:00-06:00')).toEqual([]);
  expect(day('2031-03-12', '22h', '21:59-06:00')).toEqual(['A804']);
  // What runs over counts on the day it runs into.
  expect(journal(['2031-03-12', hours('rh', '22:00-06:00')], ['2031-03-13', hours('rh', '19h')]).problems[0]).toMatch(
    /^A804 .*2031-03-13.*24 h/,
  );
});

test('the second pass through an hour is no overlap with the first', () => {
  const { problems, record } = journal([
    '2031-10-26',
    'hours: [{ by: rh, on: brakes, time: "01:00-01:30" }, { by: rh, on: frame, time: "01:00+2-01:30+2" }]',
  ]);
  expect(problems).toEqual([]);
  expect(record.ledger.entries.map(({ minutes }) => minutes)).toEqual([30, 30]);
});

test('a clock range of more than sixteen hours is asked about, a length that is written out is not', () => {
  const told = (time: string) => journal(['2031-03-12', hours('rh', time)]).warnings.map((warning) => warning.slice(0, 4));
  expect(['22:00-14:00', '22:00-14:01', '22:00 – 21:00', '17h'].map(told)).toEqual([[], ['A823'], ['A823'], []]);
});
