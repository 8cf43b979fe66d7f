import type { IsoDate } from '../../../journal/model.ts';
import { monthOf, yearOf } from '../../../journal/values/date.ts';
import { bookAddress, bookYearAddress, entryBooks } from '../books/entry-books.ts';
import type { OpenBook } from '../books/open-book.ts';
import type { RecordSheet } from '../page/sheet.ts';

/** Links of the figures of a day that need not be a shown one: to the month of the last entry that each sums, in its book. */
export function openOn(sheet: RecordSheet, date: IsoDate): OpenBook {
  const books = entryBooks(sheet.record);
  return (slug) => {
    const book = books.get(slug);
    const last = book?.entries.findLast((entry) => entry.date <= date);
    if (book === undefined || last === undefined) return null;
    const page = book.split ? bookYearAddress(slug, yearOf(last.date)) : bookAddress(slug);
    return sheet.link(`${page}#${monthOf(last.date)}`);
  };
}
