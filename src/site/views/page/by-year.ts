/** Long lists by month; past a length, each year has its own page. Newest first throughout. */
import type { IsoDate } from '../../../journal/model.ts';
import { monthOf, yearOf } from '../../../journal/values/date.ts';

export interface MonthOf<T> {
  /** `2024-09` */
  readonly month: string;
  readonly things: readonly T[];
}

/** Newest month first, and within a month the newest first. */
export function byMonth<T>(things: readonly T[], dateOf: (thing: T) => IsoDate): readonly MonthOf<T>[] {
  const months = Map.groupBy(things.toReversed(), (thing) => monthOf(dateOf(thing)));
  return [...months].map(([month, list]) => ({ month, things: list }));
}

/**
 * The years that have a page of their own, newest first; none while one page holds all.
 *
 * @param things oldest first
 * @param onePage how many one page may hold
 */
export function pagedYears<T>(things: readonly T[], dateOf: (thing: T) => IsoDate, onePage: number): readonly string[] {
  return things.length <= onePage ? [] : [...new Set(things.map((thing) => yearOf(dateOf(thing))))].reverse();
}

/** What the first page shows: all, or the last year. */
export function onFirstPage<T>(things: readonly T[], dateOf: (thing: T) => IsoDate, onePage: number): readonly T[] {
  const [last] = pagedYears(things, dateOf, onePage);
  return last === undefined ? things : ofYear(things, dateOf, last);
}

export function ofYear<T>(things: readonly T[], dateOf: (thing: T) => IsoDate, year: string): readonly T[] {
  return things.filter((thing) => yearOf(dateOf(thing)) === year);
}
