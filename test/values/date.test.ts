import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { expect, test } from 'vitest';
import { clipFragment, formatClipTime, readClipTime } from '../../src/journal/values/clip-time.ts';
import { addDays, daysBetween, lastDayOf, mondayOf, monthsFrom, readDate, weekOf } from '../../src/journal/values/date.ts';
import { readFragment } from './media-fragment.ts';

test.each(['2031-03-12', '2024-02-29', '2000-02-29', '1952-12-31', '0001-01-01', '9999-12-31'])('%s is a date', (text) =>
  expect(readDate(text)).toEqual({ ok: true, value: text }),
);

test.each([
  '2025-02-29',
  '1900-02-29',
  '2031-13-01',
  '2031-00-10',
  '2031-04-31',
  '2031-3-12',
  '12/03/2031',
  '20310312',
  '2031-03-12T10:00',
  '0000-01-01',
  '',
])('%j is none', (text) => expect(readDate(text)).toMatchObject({ ok: false, code: 'A305' }));

// Independent reference: temporal-polyfill, the calendar of ISO 8601.
const days = fc.integer({ min: 0, max: 60_000 }).map((day) => Temporal.PlainDate.from('1900-01-01').add({ days: day }));

test('any day is read, and its neighbours, weeks and months are those of Temporal', () => {
  fc.assert(
    fc.property(days, fc.integer({ min: -800, max: 800 }), (day, more) => {
      const text = day.toString();
      const other = day.add({ days: more }).toString();
      expect(readDate(text)).toEqual({ ok: true, value: text });
      expect(addDays(text, more)).toBe(other);
      expect(daysBetween(text, other)).toBe(more);
      expect(weekOf(text)).toBe(`${day.yearOfWeek}-W${String(day.weekOfYear).padStart(2, '0')}`);
      expect(mondayOf(text)).toBe(day.subtract({ days: day.dayOfWeek - 1 }).toString());
      expect(lastDayOf(text.slice(0, 7))).toBe(day.with({ day: day.daysInMonth }).toString());
    }),
  );
});

test('months run on over a new year, and none is left out', () => {
  expect(monthsFrom('2030-11-30', '2031-02-01')).toEqual(['2030-11', '2030-12', '2031-01', '2031-02']);
  expect(monthsFrom('2031-02-01', '2031-02-28')).toEqual(['2031-02']);
});

test.each([
  ['12:40', 760],
  ['1:02:05', 3725],
  ['0:00', 0],
  ['75:10', 4510],
])('%s in a clip is second %i', (text, seconds) => expect(readClipTime(text)).toEqual({ ok: true, value: seconds }));

test.each(['12', '12:4', '12:60', '1:60:00', '-1:00', '1:2:03', '', '12:40.5'])('%j is no time in a clip', (text) =>
  expect(readClipTime(text)).toMatchObject({ ok: false, code: 'A906' }),
);

test('a time in a clip is written as it was read', () => {
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 359_999 }), (seconds) => {
      expect(readClipTime(formatClipTime(seconds))).toEqual({ ok: true, value: seconds });
    }),
  );
});

// Source: W3C Media Fragments URI 1.0: #t=3,7 and #t=3 are valid; #t=7,3 and #t=3,3 are not.
test('a fragment begins a clip at its time', () => {
  expect(clipFragment(3)).toBe('#t=3');
  expect(clipFragment(3, 7)).toBe('#t=3,7');
  expect(() => clipFragment(7, 3)).toThrow(RangeError);
  expect(() => clipFragment(3, 3)).toThrow(RangeError);
});

// Source: W3C Media Fragments URI 1.0, section 4.2.1 and its test cases for time: valid and invalid forms.
test.each([
  ['#t=3,7', { start: 3, end: 7 }],
  ['#t=3', { start: 3, end: null }],
  ['#t=,7', { start: 0, end: 7 }],
  ['#t=npt:10,20', { start: 10, end: 20 }],
  ['#t=0:02:00,121.5', { start: 120, end: 121.5 }],
  ['#t=7,3', null],
  ['#t=3,3', null],
  ['#t=,', null],
  ['#t=3,', null],
  ['#t=asdf', null],
  ['#t=-3', null],
  ['#t=', null],
])('the standard takes %s for %o', (text, time) => {
  expect(readFragment(text)).toEqual(time);
});

test('every fragment that is written is one that the standard takes, for the same time', () => {
  const seconds = fc.integer({ min: 0, max: 359_999 });
  fc.assert(
    fc.property(seconds, fc.option(seconds), (start, end) => {
      if (end !== null && end <= start) expect(() => clipFragment(start, end)).toThrow(RangeError);
      else expect(readFragment(clipFragment(start, end))).toEqual({ start, end });
    }),
  );
});
