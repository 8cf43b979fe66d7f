import { asTyped } from './as-typed.ts';
import { addDays, type IsoDate } from './date.ts';
import { bad, ok, quoted, type Reading } from './reading.ts';
import { timeMeant } from './time-meant.ts';
import { instantsOf, offsetAt } from './zone.ts';

/** Time worked, from one instant to another in minutes since 1970-01-01T00:00Z. */
export interface Span {
  readonly start: number;
  readonly end: number;
}

export interface TimeSpent {
  readonly minutes: number;
  /** For a clock range. */
  readonly span: Span | null;
}

const DAY = 24 * 60;
const FORMS = 'Write a clock range (`19:10-21:40`) or a length (`90m`, `1h`, `1h30m`, `PT1H30M`).';

/**
 * Reads time worked: a clock range in the journal's zone, over midnight when it ends before it begins,
 * or a length (our short form, or an ISO 8601 duration of hours and minutes).
 *
 * A time that the clocks skip is A809. One that comes twice is taken the first time; `01:30+2` is the second,
 * and either may be told by its offset as in ISO 8601: `01:30+01:00`.
 */
export function readTime(text: string, date: IsoDate, timeZone: string): Reading<TimeSpent> {
  const written = asTyped(text);
  const ranges = rangesIn(written).map((range) => readRange(written, range, date, timeZone));
  const [first] = ranges;
  if (first !== undefined) return ranges.find((range) => range.ok) ?? first;
  return readLength(written, dayLength(date, timeZone));
}

function readLength(written: string, longest: number): Reading<TimeSpent> {
  const [whole, hours, rest] = /^(?:PT)?(?:(\d{1,3})\s*h)?\s*(?:(\d{1,4})\s*m(?:in)?)?$/i.exec(written) ?? [];
  const minutes = Number(hours ?? 0) * 60 + Number(rest ?? 0);
  if (whole === undefined || minutes === 0) return bad('A306', `${quoted(written)} is not a time worked.`, formOf(written));
  if (hours !== undefined && Number(rest ?? 0) > 59) {
    const meant = `${Math.floor(minutes / 60)}h${minutes % 60 === 0 ? '' : `${minutes % 60}m`}`;
    return bad('A306', `${quoted(written)} has ${rest} minutes beside its hours; an hour holds 60.`, `Write ${meant}, if that was meant.`);
  }
  if (minutes > longest) return bad('A306', `${quoted(written)} is more than a day.`, FORMS);
  return ok({ minutes, span: null });
}

function formOf(written: string): string {
  const meant = timeMeant(written);
  return meant === null ? FORMS : `Write \`${meant}\`.`;
}

/** Reads hours that something is likely to take, `6`, `7.5` or `1h30m`, in whole minutes. */
export function readHours(text: string): Reading<number> {
  const written = asTyped(text);
  const found = /^(\d{1,5})(?:\.(\d{1,2}))?$/.exec(written);
  const minutes = found ? Number(found[1]) * 60 + Math.round((Number((found[2] ?? '0').padEnd(2, '0')) * 60) / 100) : 0;
  if (minutes > 0) return ok(minutes);
  const length = readLength(written, MOST_HOURS * 60);
  return length.ok
    ? ok(length.value.minutes)
    : bad(length.code, `${quoted(text)} is not a number of hours.`, 'Write `6`, `7.5` or `1h30m`.');
}

/** More than any one thing to do takes. */
const MOST_HOURS = 9999;

/** A time on the clock: minutes after midnight, 1440 for 24:00; and which of two it is, as written. */
interface Clock {
  readonly hour: number;
  readonly minute: number;
  readonly which: string;
}

const CLOCK = String.raw`(\d{1,2})[:.](\d{2})`;
const WHICH = String.raw`(\+2|Z|[+-]\d{2}:\d{2})`;
/** An offset west of Greenwich and the other end of a range look alike, so there may be two ways to read one. */
const RANGES = [`^${CLOCK}${WHICH}? ?- ?${CLOCK}${WHICH}?$`, `^${CLOCK}() ?- ?${CLOCK}${WHICH}?$`].map((form) => new RegExp(form));

function rangesIn(written: string): (readonly [Clock, Clock])[] {
  return RANGES.flatMap((form) => {
    const [, fromHour, fromMinute, from, toHour, toMinute, to] = form.exec(written) ?? [];
    return fromHour === undefined ? [] : [[clockOf(fromHour, fromMinute, from), clockOf(toHour, toMinute, to)] as const];
  });
}

function clockOf(hour = '', minute = '', which = ''): Clock {
  return { hour: Number(hour), minute: Number(minute), which };
}

function readRange(text: string, [from, to]: readonly [Clock, Clock], date: IsoDate, timeZone: string): Reading<TimeSpent> {
  const late = to.hour === 24 && to.minute === 0;
  if (from.hour > 23 || from.minute > 59 || to.minute > 59 || (to.hour > 23 && !late)) {
    return bad('A306', `${quoted(text)} is not on a clock of 24 hours.`, FORMS);
  }
  const [begins, ends] = [minuteOf(from), minuteOf(to)];
  if (begins === ends && from.which === to.which) return bad('A306', `${quoted(text)} begins and ends at the same time.`, FORMS);
  const start = instantOf(from, date, timeZone);
  if (!start.ok) return start;
  // Within the hour that comes twice the clock may show less at the end than at the beginning.
  const sameDay = late || (begins >= ends && to.which === '') ? null : instantOf(to, date, timeZone);
  if (sameDay !== null && !sameDay.ok && begins < ends) return sameDay;
  const end = sameDay?.ok && sameDay.value > start.value ? sameDay : instantOf(to, addDays(date, 1), timeZone);
  if (!end.ok) return end;
  if (end.value <= start.value || end.value - start.value > 25 * 60) return bad('A306', `${quoted(text)} ends before it begins.`, FORMS);
  return ok({ minutes: end.value - start.value, span: { start: start.value, end: end.value } });
}

function minuteOf({ hour, minute }: Clock): number {
  return (hour * 60 + minute) % DAY;
}

/** The instant at which a clock of the zone shows a time of that day; A809 where it never does, A306 where it does not so. */
function instantOf(clock: Clock, date: IsoDate, timeZone: string): Reading<number> {
  const instants = instantsOf(date, minuteOf(clock), timeZone);
  const [first, second] = instants;
  const shown = `${two(clock.hour % 24)}:${two(clock.minute)}`;
  if (first === undefined) {
    return bad('A809', `The clocks went forward over ${shown} on this day.`, 'Write the time that the clock showed.');
  }
  if (clock.which === '') return ok(first);
  if (clock.which === '+2') {
    return second === undefined ? bad('A306', `${shown} comes once on ${date}, not twice.`, `Write ${shown}.`) : ok(second);
  }
  const told = instants.find((instant) => offsetAt(instant, timeZone) === minutesAhead(clock.which));
  if (told !== undefined) return ok(told);
  const offsets = instants.map((instant) => offsetText(offsetAt(instant, timeZone))).join(' or ');
  return bad('A306', `${shown}${clock.which} is not a time of ${timeZone} on ${date}: the offset is ${offsets}.`, `Write ${shown}.`);
}

function minutesAhead(offset: string): number {
  const [, sign, hours, minutes] = /^([+-])(\d{2}):(\d{2})$/.exec(offset) ?? [];
  return (sign === '-' ? -1 : 1) * (Number(hours ?? 0) * 60 + Number(minutes ?? 0)) || 0;
}

function offsetText(minutes: number): string {
  return `${minutes < 0 ? '-' : '+'}${two(Math.floor(Math.abs(minutes) / 60))}:${two(Math.abs(minutes) % 60)}`;
}

function two(n: number): string {
  return String(n).padStart(2, '0');
}

/** The instant at which a day begins: its midnight, or the first time after it where the clocks skip midnight. */
function beginOf(date: IsoDate, timeZone: string): number {
  for (let minute = 0; minute < DAY; minute += 15) {
    const [first] = instantsOf(date, minute, timeZone);
    if (first !== undefined) return first;
  }
  // A day that a zone left out when it changed sides of the date line.
  return beginOf(addDays(date, 1), timeZone);
}

/** How many minutes a day has in a zone: 1440, or an hour less or more where the clocks change. */
export function dayLength(date: IsoDate, timeZone: string): number {
  return beginOf(addDays(date, 1), timeZone) - beginOf(date, timeZone);
}

/** A span by the days it falls on, earliest first: what comes after midnight belongs to the next day. */
export function byDay({ start, end }: Span, date: IsoDate, timeZone: string): { readonly date: IsoDate; readonly minutes: number }[] {
  const midnight = beginOf(addDays(date, 1), timeZone);
  if (end <= midnight) return [{ date, minutes: end - start }];
  const after = byDay({ start: Math.max(start, midnight), end }, addDays(date, 1), timeZone);
  return start < midnight ? [{ date, minutes: midnight - start }, ...after] : after;
}
