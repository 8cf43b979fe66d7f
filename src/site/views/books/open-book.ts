import type { IsoDate } from '../../../journal/model.ts';
import { type AnyQuestion, lookup } from '../../kept/question.ts';
import type { Sheet } from '../page/sheet.ts';
import { bookAddress } from './entry-books.ts';
import { runningAddress } from './running-totals.ts';

/** The link to where the entries of a book are listed with their totals; null where there is none. */
export type OpenBook = (slug: string) => string | null;

/** As the books stand on the record's day. */
export function openNow(sheet: Sheet): OpenBook {
  return (slug) => sheet.link(bookAddress(slug));
}

const RUNNING = lookup('running total', ({ record }, slug: string, date: IsoDate) => runningAddress(record, slug, date));

export const OPEN_QUESTIONS: readonly AnyQuestion[] = [RUNNING];

/** As they stood at the end of a shown day. */
export function openAt(sheet: Sheet, date: IsoDate): OpenBook {
  return (slug) => {
    const to = sheet.ask(RUNNING, slug, date);
    return to === null ? null : sheet.link(to);
  };
}
