import { UTCDate, utc } from '@date-fns/utc';
// One by one: the library as a whole takes a second to load.
import { addDays as laterBy } from 'date-fns/addDays';
import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays';
import { getISOWeek } from 'date-fns/getISOWeek';
import { getISOWeekYear } from 'date-fns/getISOWeekYear';
import { lastDayOfMonth } from 'date-fns/lastDayOfMonth';
import { startOfISOWeek } from 'date-fns/startOfISOWeek';
import { datesMeant } from './date-meant.ts';
import { keptIn } from './once.ts';
import { bad, ok, quoted, type Reading } from './reading.ts';

/** A calendar date, `YYYY-MM-DD`. Dates are compared as text; no time zone can move them. */
export type IsoDate = string;

const WRITTEN = /^(\d{4})-(\d{2})-(\d{2})$/;

/** Reads a calendar date, `YYYY-MM-DD` (ISO 8601), that is in the calendar. */
export function readDate(text: string): Reading<IsoDate> {
  const found = WRITTEN.exec(text.trim());
  if (!found) return bad('A305', `${quoted(text)} is not a date; a date is written YYYY-MM-DD.`, turnedRound(text) ?? FORM);
  const [date, year, month, day] = found as unknown as [string, string, string, string];
  if (year === '0000') return bad('A305', `${date} is not in the calendar: years begin at 0001.`, FORM);
  if (month < '01' || month > '12')
    return bad('A305', `${date} is not in the calendar: there is no month ${month}.`, turnedOver(year, month, day));
  const last = lastDayOf(date.slice(0, 7));
  if (day < '01' || day > last.slice(8)) {
    return bad('A305', `${date} is not in the calendar.`, `That month ends on ${last}.`);
  }
  return ok(date);
}

const FORM = 'Year first, then month, then day: 2031-03-12.';

/** Month and day, where only their change of places makes a month. */
function turnedOver(year: string, month: string, day: string): string {
  return day >= '01' && day <= '12' ? `Did you mean ${year}-${day}-${month}?` : FORM;
}

/** For `12 March 2031`, `3/4/2031` and the like: what to write, without guessing which number is the month. */
function turnedRound(text: string): string | null {
  const [likely, other] = datesMeant(text);
  if (likely === undefined) return null;
  if (other === undefined) return `Did you mean ${likely}?`;
  return `Write ${likely} if the day stands first, ${other} if the month does.`;
}

/** Midnight UTC of a date; only for arithmetic on whole days. */
function dayOf(date: IsoDate): UTCDate {
  return new UTCDate(`${date}T00:00:00Z`);
}

function isoOf(day: Date): IsoDate {
  return day.toISOString().slice(0, 10);
}

/** The date `days` later, or earlier when negative. */
export function addDays(date: IsoDate, days: number): IsoDate {
  return isoOf(laterBy(dayOf(date), days));
}

/** Whole days from the first date to the second; negative when it is earlier. */
export function daysBetween(from: IsoDate, to: IsoDate): number {
  return dayNumber(to) - dayNumber(from);
}

const EPOCH = new UTCDate(0);
/** A journal has some thousands of dates, and asks for each a hundred times. */
const dayNumbers = new Map<IsoDate, number>();

const dayNumber = (date: IsoDate): number => keptIn(dayNumbers, date, () => differenceInCalendarDays(dayOf(date), EPOCH, { in: utc }));

/** `2031-03` of `2031-03-12`. */
export function monthOf(date: IsoDate): string {
  return date.slice(0, 7);
}

/** `2031` of `2031-03-12`. */
export function yearOf(date: IsoDate): string {
  return date.slice(0, 4);
}

/** The last day of a month written `YYYY-MM`. */
export function lastDayOf(month: string): IsoDate {
  return keptIn(lastDays, month, () => isoOf(lastDayOfMonth(dayOf(`${month}-01`))));
}

/** A journal has some hundreds of months. */
const lastDays = new Map<string, IsoDate>();

/** Every month from the one of the first date to the one of the last, both included, `YYYY-MM`. */
export function monthsFrom(first: IsoDate, last: IsoDate): string[] {
  const months: string[] = [];
  for (let month = monthOf(first); month <= monthOf(last); month = nextMonth(month)) months.push(month);
  return months;
}

function nextMonth(month: string): string {
  return monthOf(addDays(lastDayOf(month), 1));
}

/** The Monday on or before a date: ISO 8601 weeks begin on Monday. */
export function mondayOf(date: IsoDate): IsoDate {
  return isoOf(startOfISOWeek(dayOf(date)));
}

/** The ISO 8601 week of a date, `2031-W11`. The year is that of the week's Thursday. */
export function weekOf(date: IsoDate): string {
  const day = dayOf(date);
  const year = String(getISOWeekYear(day)).padStart(4, '0');
  return `${year}-W${String(getISOWeek(day)).padStart(2, '0')}`;
}
