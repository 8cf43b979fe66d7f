import type { IsoDate } from '../../../journal/model.ts';
import { monthOf, yearOf } from '../../../journal/values/date.ts';
import { type Address, PAGES } from '../../addresses.ts';
import { pagedYears } from '../page/by-year.ts';
import { dateOfSession, SESSIONS_A_PAGE } from '../page/long-lists.ts';
import type { Sheet } from '../page/sheet.ts';

/** The month of a session, and where it stands in the list of all. */
export function monthOfSessions({ record, figures }: Sheet, date: IsoDate): { readonly words: string; readonly to: Address } {
  const { sessions } = record.journal;
  const [newest] = pagedYears(sessions, dateOfSession, SESSIONS_A_PAGE);
  const page = newest === undefined || newest === yearOf(date) ? PAGES.sessions : `sessions/year/${yearOf(date)}.html`;
  return { words: figures.month(monthOf(date)), to: `${page}#${monthOf(date)}` };
}
