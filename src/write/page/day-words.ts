/** The day of an evening in words. */
import type { JournalData } from './state.ts';

const LONG = new Intl.DateTimeFormat('en-GB', { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric', timeZone: 'UTC' });

/** `the evening of Wednesday 12 March 2031`; null where that is no day. */
export function eveningWords(date: unknown): string | null {
  const day = new Date(typeof date === 'string' && /^\d{4}-\d\d-\d\d$/.test(date) ? `${date}T00:00:00Z` : Number.NaN);
  return Number.isNaN(day.getTime()) ? null : `the evening of ${LONG.format(day).replace(',', '')}`;
}

/** Why a note that is begun now is not of today; null where it is. */
export function nightWords({ today, evening }: JournalData): string | null {
  return today === evening ? null : 'It is past midnight: until four o’clock a note is of the evening before. Its date can be changed.';
}
