/** The sessions by month; a long journal gets a page a year. */
import type { Session } from '../../journal/model.ts';
import { monthOf, yearOf } from '../../journal/values/date.ts';

/** More sessions than this, and each year has its own page. */
const ONE_PAGE = 500;

export interface Month {
  /** `2024-09` */
  readonly month: string;
  readonly sessions: readonly Session[];
}

/** Newest month first, and within a month the newest session first. */
export function byMonth(sessions: readonly Session[]): readonly Month[] {
  const months = Map.groupBy(sessions.toReversed(), ({ date }) => monthOf(date));
  return [...months].map(([month, list]) => ({ month, sessions: list }));
}

/** The years that have a page of their own, newest first; none while one page holds all. */
export function sessionYears(sessions: readonly Session[]): readonly string[] {
  if (sessions.length <= ONE_PAGE) return [];
  return [...new Set(sessions.map(({ date }) => yearOf(date)))].reverse();
}

/** The sessions that the first page shows: all, or those of the last year. */
export function onFirstPage(sessions: readonly Session[]): readonly Session[] {
  const [last] = sessionYears(sessions);
  return last === undefined ? sessions : sessions.filter(({ date }) => yearOf(date) === last);
}
