/** When a picture was taken, by the clocks of the journal's time zone. Clocks are in minutes and seconds, never in a `Date` of this machine. */
import type { IsoDate } from '../journal/model.ts';
import { eveningOf } from '../journal/values/evening.ts';
import { instantsOf, offsetAt } from '../journal/values/zone.ts';
import type { TakenAt } from './facts.ts';

/**
 * The moment in seconds since 1970-01-01T00:00Z. Without an offset the camera's clock is taken to show the
 * journal's time; a clock time that happens twice is
 * the earlier one, and one that the clocks jumped over is read as if they had not yet.
 */
export function instantTaken(taken: TakenAt, timeZone: string): number {
  const shown = Date.parse(`${taken.local}Z`) / 1000;
  if (taken.offset !== null) return shown - offsetMinutes(taken.offset) * 60;
  const [day = '', clock = ''] = taken.local.split('T');
  const minute = Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3, 5));
  const seconds = Number(clock.slice(6, 8));
  const [first] = instantsOf(day, minute, timeZone);
  if (first !== undefined) return first * 60 + seconds;
  return shown - offsetAt(Math.floor(shown / 60) - 24 * 60, timeZone) * 60;
}

/** The same moment as the clocks of the journal showed it, `YYYY-MM-DDTHH:MM:SS`. */
export function clockThere(taken: TakenAt, timeZone: string): string {
  if (taken.offset === null) return taken.local;
  const instant = instantTaken(taken, timeZone);
  const there = instant + offsetAt(Math.floor(instant / 60), timeZone) * 60;
  return new Date(there * 1000).toISOString().slice(0, 19);
}

/** What is said of it under a picture, as far as the journal keeps that: `19:32, Obscura Nine`; '' when nothing is kept. */
export function takenWords(
  { takenAt, camera }: { readonly takenAt: TakenAt | null; readonly camera: string | null },
  timeZone: string,
): string {
  const clock = takenAt === null ? null : clockThere(takenAt, timeZone).slice(11, 16);
  return [clock, camera].filter((one) => one !== null).join(', ');
}

/** Whether a picture was taken in a session's day or in the night that followed, while that was still the evening. */
export function takenInSession(taken: TakenAt, session: IsoDate, timeZone: string): boolean {
  const there = clockThere(taken, timeZone);
  return there.startsWith(session) || eveningOf(there) === session;
}

function offsetMinutes(offset: string): number {
  const [hours = '0', minutes = '0'] = offset.slice(1).split(':');
  return (offset.startsWith('-') ? -1 : 1) * (Number(hours) * 60 + Number(minutes));
}
