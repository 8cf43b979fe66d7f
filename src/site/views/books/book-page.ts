import { isBudgeted } from '../../../journal/ledger/over-time.ts';
import { sumOf } from '../../../journal/ledger/sums.ts';
import { type Totals, totalsOf } from '../../../journal/ledger/totals.ts';
import type { Entry } from '../../../journal/record.ts';
import type { Address } from '../../addresses.ts';
import type { Sheet } from '../page/sheet.ts';
import { type EntryBook, sectionAddress } from './entry-books.ts';
import { type RunningTotal, runningTotals } from './running-totals.ts';

/** A book of more than a month has its years. */
export const isYearly = ({ slug }: EntryBook): boolean => !slug.startsWith('month-');

export interface BookTotals {
  readonly totals: Totals;
  /** What of it counts against budgets of money; null for a book of years. */
  readonly budgeted: number | null;
  /** What the whole book came to by past days; none in the book of a month. */
  readonly running: readonly RunningTotal[];
}

/** @param entries those of the book that the page shows */
export function bookTotals({ record }: Sheet, book: EntryBook, entries: readonly Entry[]): BookTotals {
  const yearly = isYearly(book);
  return {
    totals: totalsOf(entries),
    budgeted: yearly ? null : sumOf(entries.filter((entry) => isBudgeted(record.journal, entry))).gross,
    running: yearly ? runningTotals(record, book) : [],
  };
}

/** What one year of a book comes to. */
export const totalsOfYear = ({ entries }: { readonly entries: readonly Entry[] }): Totals => totalsOf(entries);

/** Where a year of a book begins. */
export function yearSection({ record }: Sheet, { slug }: EntryBook, year: string): Address {
  return sectionAddress(record, slug, `year-${year}`);
}
