/** Wall clocks and instants, by the time zone table that `Intl` carries (IANA). */
import type { IsoDate } from './date.ts';
import { keptIn } from './once.ts';

const MINUTE = 60_000;
const DAY = 24 * 60;

/** Whether the system knows a time zone of that name. */
export function isTimeZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

/**
 * The instants at which a clock in the zone shows a time: one as a rule, two when the clocks go back over
 * it, none when they go forward over it.
 *
 * @param minute minutes after midnight on the clock, from 0 to 1439
 * @returns minutes since 1970-01-01T00:00Z, earliest first
 */
export function instantsOf(date: IsoDate, minute: number, timeZone: string): number[] {
  const naive = Date.parse(`${date}T00:00:00Z`) / MINUTE + minute;
  const offsets = new Set([offsetAt(naive - DAY, timeZone), offsetAt(naive + DAY, timeZone)]);
  return [...offsets]
    .map((offset) => naive - offset)
    .filter((instant) => instant + offsetAt(instant, timeZone) === naive)
    .sort((a, b) => a - b);
}

const formats = new Map<string, Intl.DateTimeFormat>();
const known = new Map<string, Map<number, number>>();

/** Minutes that a zone's clocks are ahead of UTC at an instant (minutes since 1970). */
export function offsetAt(instant: number, timeZone: string): number {
  // No zone changes twice within a day, so a day that ends as it began is alike throughout.
  const day = Math.floor(instant / DAY) * DAY;
  const offset = lookedUp(day, timeZone);
  // Zones change at whole quarters of an hour, so one look-up serves them all.
  return offset === lookedUp(day + DAY, timeZone) ? offset : lookedUp(Math.floor(instant / 15) * 15, timeZone);
}

function lookedUp(instant: number, timeZone: string): number {
  const ofZone = keptIn(known, timeZone, () => new Map<number, number>());
  return keptIn(ofZone, instant, () => lookUp(instant, timeZone));
}

function lookUp(instant: number, timeZone: string): number {
  let format = formats.get(timeZone);
  if (!format) {
    format = new Intl.DateTimeFormat('en', { timeZone, timeZoneName: 'longOffset', year: 'numeric' });
    formats.set(timeZone, format);
  }
  // `2031, GMT+01:00`, and `GMT` alone where there is nothing to add.
  const [, sign, hours, minutes] = /GMT(?:([+-])(\d+):(\d+))?/.exec(format.format(instant * MINUTE)) ?? [];
  return (sign === '-' ? -1 : 1) * (Number(hours ?? 0) * 60 + Number(minutes ?? 0));
}
