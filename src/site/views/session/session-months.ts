import type { IsoDate, Journal } from '../../../journal/model.ts';
import { monthOf, yearOf } from '../../../journal/values/date.ts';
import { once } from '../../../journal/values/once.ts';
import { type Address, PAGES } from '../../addresses.ts';
import { pagedYears } from '../page/by-year.ts';
import { dateOfSession, SESSIONS_A_PAGE } from '../page/long-lists.ts';
import type { RecordSheet } from '../page/sheet.ts';

/** The month of a session, and where it stands in the list of all. */
export function monthOfSessions({ record, figures }: RecordSheet, date: IsoDate): { readonly words: string; readonly to: Address } {
  const { newest } = newestPagedYear(record.journal);
  const page = newest === null || newest === yearOf(date) ? PAGES.sessions : `sessions/year/${yearOf(date)}.html`;
  return { words: figures.month(monthOf(date)), to: `${page}#${monthOf(date)}` };
}

/** Every session asks for it; null while one page holds all. */
const newestPagedYear = once(({ sessions }: Journal) => ({ newest: pagedYears(sessions, dateOfSession, SESSIONS_A_PAGE)[0] ?? null }));
