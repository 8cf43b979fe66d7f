/** The past days that have pages of their own. */

import type { JournalRecord } from '../../../journal/record.ts';
import { type ViewDate, viewDates } from '../../../journal/registers/view-dates.ts';
import { yearOf } from '../../../journal/values/date.ts';
import { once } from '../../../journal/values/once.ts';

/** More rows than this over all days, and the days long past are thinned out: nobody leafs through forty years by month. */
const MOST_ROWS = 100_000;
const YEARS_BY_MONTH = 3;

/**
 * Every month's end and every milestone's day. Where that would print more rows than a site can carry,
 * the last three years keep their months; of the years before, only the last month's end and the milestones stay.
 */
export const shownDates = once((record: JournalRecord): readonly ViewDate[] => {
  const all = viewDates(record);
  if (all.length * record.journal.positions.size <= MOST_ROWS) return all;
  const from = String(Number(yearOf(record.day)) - YEARS_BY_MONTH);
  return all.filter(({ date, milestones }) => yearOf(date) > from || milestones.length > 0 || date.slice(5, 7) === '12');
});

/** The shown days by year, oldest first, and whether months of years long past were left out. */
export function shownYears({ record }: { readonly record: JournalRecord }): {
  readonly years: readonly (readonly [year: string, dates: readonly ViewDate[]])[];
  readonly thinned: boolean;
} {
  const dates = shownDates(record);
  return { years: [...Map.groupBy(dates, ({ date }) => yearOf(date))], thinned: dates.length < viewDates(record).length };
}
