import type { IsoDate } from './date.ts';
import { addDays } from './date.ts';
import { bad, ok, quoted, type Reading } from './reading.ts';
import { instantsOf } from './zone.ts';

export interface TimeSpent {
  readonly minutes: number;
  /** For a clock range: minutes since 1970-01-01T00:00Z. */
  readonly span: { readonly start: number; readonly end: number } | null;
}

const DAY = 24 * 60;
const FORMS = 'Write a clock range (`19:10-21:40`) or a length (`90m`, `1h`, `1h30m`, `PT1H30M`).';

/**
 * Reads time worked: a clock range in the journal's zone, over midnight when it ends before it begins,
 * or a length (our short form, or an ISO 8601 duration of hours and minutes).
 *
 * A time that the clocks skip is A809; one that comes twice is taken the first time.
 */
export function readTime(text: string, date: IsoDate, timeZone: string): Reading<TimeSpent> {
  const written = text.trim();
  const range = /^(\d{1,2}):(\d{2})\s*[-–]\s*(\d{1,2}):(\d{2})$/.exec(written);
  if (range) return readRange(written, range.slice(1).map(Number), date, timeZone);
  const length = /^(?:PT)?(?:(\d{1,3})\s*h)?\s*(?:(\d{1,4})\s*m(?:in)?)?$/i.exec(written);
  const minutes = length ? Number(length[1] ?? 0) * 60 + Number(length[2] ?? 0) : 0;
  if (!length || minutes === 0) return bad('A306', `${quoted(text)} is not a time worked.`, FORMS);
  if (minutes > DAY) return bad('A306', `${quoted(text)} is more than a day.`, FORMS);
  return ok({ minutes, span: null });
}

function readRange(text: string, numbers: number[], date: IsoDate, timeZone: string): Reading<TimeSpent> {
  const [startHour = 0, startMinute = 0, endHour = 0, endMinute = 0] = numbers;
  const late = endHour === 24 && endMinute === 0;
  if (startHour > 23 || startMinute > 59 || endMinute > 59 || (endHour > 23 && !late)) {
    return bad('A306', `${quoted(text)} is not on a clock of 24 hours.`, FORMS);
  }
  const from = startHour * 60 + startMinute;
  const to = endHour * 60 + endMinute;
  if (from === to) return bad('A306', `${quoted(text)} begins and ends at the same time.`, FORMS);
  const endDay = to < from || late ? addDays(date, 1) : date;
  const start = instantsOf(date, from, timeZone)[0];
  const end = instantsOf(endDay, to % DAY, timeZone)[0];
  if (start === undefined || end === undefined) return skipped(start === undefined ? from : to);
  if (end <= start) return bad('A306', `${quoted(text)} ends before it begins.`, FORMS);
  return ok({ minutes: end - start, span: { start, end } });
}

function skipped(minute: number): Reading<never> {
  const clock = `${String(Math.floor(minute / 60) % 24).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`;
  return bad('A809', `The clocks went forward over ${clock} on this day.`, 'Write the time that the clock showed.');
}
