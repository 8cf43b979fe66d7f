/** One rule for whatever belongs to an evening: pictures, and notes begun after midnight. */
import { describe, expect, test } from 'vitest';
import { daysOf } from '../../src/cli/intake/evenings.ts';
import { eveningOf } from '../../src/journal/values/evening.ts';
import { takenInSession } from '../../src/photos/taken.ts';
import { eveningBy } from '../../src/site/today.ts';

const CLOCKS = [
  ['2031-03-12T23:59', '2031-03-12'],
  ['2031-03-13T00:00', '2031-03-12'],
  ['2031-03-13T03:59', '2031-03-12'],
  ['2031-03-13T04:00', '2031-03-13'],
  ['2031-03-01T00:30', '2031-02-28'],
  ['2031-01-01T00:30', '2030-12-31'],
] as const;

describe.each(CLOCKS)('what happens at %s is of the evening of %s', (clock, evening) => {
  test('by the one rule, of pictures and of notes', () => {
    expect(eveningOf(clock)).toBe(evening);
    expect(daysOf(clock)[0]).toBe(evening);
    expect(takenInSession({ local: `${clock}:00`, offset: null }, evening, 'Europe/London')).toBe(true);
    expect(eveningBy({}, new Date(clock))).toBe(evening);
  });

  test('unless a day stands for the clock', () => {
    expect(eveningBy({ SOURCE_DATE_EPOCH: String(Date.UTC(2031, 4, 1) / 1000) }, new Date(clock))).toBe('2031-05-01');
  });
});
