import type { IsoDate } from '../journal/model.ts';
import { eveningOf } from '../journal/values/evening.ts';

/**
 * The day on which the record is made, by the clock of this machine.
 *
 * @param env `SOURCE_DATE_EPOCH`, seconds since 1970, stands for the clock where it is set, so that a site can be
 *   made again just as it was (reproducible-builds.org)
 */
export function todayBy(env: Readonly<Record<string, string | undefined>>, clock: Date = new Date()): IsoDate {
  const epoch = env.SOURCE_DATE_EPOCH;
  if (epoch !== undefined && isEpoch(epoch)) return new Date(Number(epoch) * 1000).toISOString().slice(0, 10);
  return shownBy(clock).slice(0, 10);
}

/**
 * The day that a note begun now is of: in the small hours that of the evening before.
 *
 * @param env as of `todayBy`; where a day stands for the clock, it is that
 */
export function eveningBy(env: Readonly<Record<string, string | undefined>>, clock: Date = new Date()): IsoDate {
  const today = todayBy(env, clock);
  return shownBy(clock).startsWith(today) ? eveningOf(shownBy(clock)) : today;
}

/** What a clock of this machine shows, `YYYY-MM-DDTHH`. */
function shownBy(clock: Date): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  const year = String(clock.getFullYear()).padStart(4, '0');
  return `${year}-${two(clock.getMonth() + 1)}-${two(clock.getDate())}T${two(clock.getHours())}`;
}

/** Whether it is a whole number of seconds since 1970, before the year 10000. */
export function isEpoch(text: string): boolean {
  return /^\d{1,12}$/.test(text) && Number(text) < 253_402_300_800;
}
