import { expect, test } from 'vitest';
import { copyOf } from '../../src/journal/copy/copy.ts';
import { paceOf } from '../../src/journal/registers/pace.ts';
import { addDays } from '../../src/journal/values/date.ts';
import { hours, journal, type NoteOf } from '../ledger/small-journal.ts';

const OPEN =
  'opens: [{ id: bleed, kind: task, what: Bleed, on: brakes, hours: 58h }, { id: look, kind: question, what: Which way }, { id: hoses, kind: buy, what: Hoses, hours: 9h }]';
/** An evening of so many minutes every so many days from the first of March, the last of them with what is open. */
const evenings = (count: number, every: number, minutes: number): NoteOf[] =>
  Array.from({ length: count }, (_, i) => [
    addDays('2031-03-01', i * every),
    `${hours('rh', `${minutes}m`)}${i === count - 1 ? `\n${OPEN}` : ''}`,
  ]);

test('the hours of the last thirteen weeks, and how many weeks the open ones are at that', () => {
  // Twenty-six Saturdays of three hours and a quarter; the last thirteen make 42 h 15 min. 67 h, those of a thing to buy among them, at 3 h 15 min a week: 20.6 weeks.
  const { record } = journal(...evenings(26, 7, 195));
  expect(paceOf(record, null)).toEqual({
    from: '2031-05-25',
    weeks: 13,
    minutes: 13 * 195,
    ahead: 4020,
    unsaid: 1,
    weeksAhead: 21,
    enoughFrom: null,
  });
});

test('of less than eight weeks there is none, and it is said from when', () => {
  const { record } = journal(...evenings(7, 7, 60));
  expect(paceOf(record, null)).toMatchObject({ weeks: 6, weeksAhead: null, enoughFrom: '2031-04-25' });
  const enough = journal(...evenings(9, 7, 60));
  expect(paceOf(enough.record, null)).toMatchObject({ weeks: 8, minutes: 480, weeksAhead: 67, enoughFrom: null });
});

test('of weeks of which few have hours there is none', () => {
  const { record } = journal(...evenings(5, 40, 60));
  expect(paceOf(record, null)).toMatchObject({ weeks: 13, weeksAhead: null, enoughFrom: null });
});

test('where nothing that is open has hours there is nothing to tell, nor in a copy without hours', () => {
  const { record } = journal(...evenings(12, 7, 60).map(([date, fields]): NoteOf => [date, fields.split('\n')[0] ?? '']));
  expect(paceOf(record, null)).toBeNull();
  const said = journal(...evenings(12, 7, 60)).record;
  const journalOf = {
    ...said.journal,
    settings: { ...said.journal.settings, copies: new Map([['short', { leaveOut: ['hours' as const], maySay: [] }]]) },
  };
  expect(paceOf(copyOf({ ...said, journal: journalOf }, 'short'), null)).toBeNull();
});
