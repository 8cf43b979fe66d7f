/**
 * What a book of entries came to by a past day on which the ledger is shown: a line under the last entry
 * of then, on which the figures of that day's ledger land.
 */
import { Running, type Totals } from '../../../journal/ledger/totals.ts';
import type { IsoDate } from '../../../journal/model.ts';
import type { Entry, JournalRecord } from '../../../journal/record.ts';
import { yearOf } from '../../../journal/values/date.ts';
import { keptIn, once } from '../../../journal/values/once.ts';
import type { Address } from '../../addresses.ts';
import { shownDates } from '../frame/shown-dates.ts';
import { bookAddress, bookYearAddress, type EntryBook, entryBooks } from './entry-books.ts';

/** The totals of a book up to an entry, the last of its day. */
export interface RunningTotal {
  readonly last: Entry;
  readonly totals: Totals;
}

const totalsByBook = once(
  (_: JournalRecord) => new WeakMap<EntryBook, readonly RunningTotal[]>(),
  ({ ledger }) => ledger,
);

/** The running totals of a book, oldest first: one for each shown day by which something more was booked. */
export function runningTotals(record: JournalRecord, book: EntryBook): readonly RunningTotal[] {
  return keptIn(totalsByBook(record), book, () => makeTotals(book, datesOf(record)));
}

function makeTotals({ entries }: EntryBook, dates: readonly IsoDate[]): RunningTotal[] {
  const running = new Running();
  const stops: RunningTotal[] = [];
  let next = 0;
  for (const date of dates) {
    const before = next;
    for (let entry = entries[next]; entry && entry.date <= date; entry = entries[next]) {
      running.add(entry);
      next += 1;
    }
    const last = entries[next - 1];
    if (next > before && last) stops.push({ last, totals: running.soFar() });
  }
  return stops;
}

const datesOf = once(
  (record: JournalRecord): readonly IsoDate[] => shownDates(record).map(({ date }) => date),
  ({ ledger }) => ledger,
);

/** The anchor of a running total: the day of the last entry in it. */
export function runningAnchor({ last }: RunningTotal): string {
  return `to-${last.date}`;
}

/** Where what a book came to by a shown day is printed; null when nothing had been booked in it. */
export function runningAddress(record: JournalRecord, slug: string, date: IsoDate): Address | null {
  const book = entryBooks(record).get(slug);
  const total = book && runningTotals(record, book).findLast(({ last }) => last.date <= date);
  if (!total) return null;
  const page = book.split ? bookYearAddress(slug, yearOf(total.last.date)) : bookAddress(slug);
  return `${page}#${runningAnchor(total)}`;
}
