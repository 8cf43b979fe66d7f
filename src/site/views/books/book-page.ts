import { isBudgeted } from '../../../journal/ledger/over-time.ts';
import { sumOf } from '../../../journal/ledger/sums.ts';
import { type Totals, totalsOf } from '../../../journal/ledger/totals.ts';
import type { Entry } from '../../../journal/record.ts';
import type { Address } from '../../addresses.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { counted } from '../page/words.ts';
import { type EntryBook, type Section, sectionAddress } from './entry-books.ts';
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
export function bookTotals({ record }: RecordSheet, book: EntryBook, entries: readonly Entry[]): BookTotals {
  const yearly = isYearly(book);
  return {
    totals: totalsOf(entries),
    budgeted: yearly ? null : sumOf(entries.filter((entry) => isBudgeted(record.journal, entry))).gross,
    running: yearly ? runningTotals(record, book) : [],
  };
}

/** What one year of a book comes to. */
export const totalsOfYear = ({ entries }: { readonly entries: readonly Entry[] }): Totals => totalsOf(entries);

/** More sections than this on a page, and only the last of them lies open. */
const FEW = 3;

/** Those that lie open when the page is. */
export function openSections(sections: readonly Section[]): ReadonlySet<Section> {
  return new Set(sections.length > FEW ? sections.slice(-1) : sections);
}

/** `12 entries, 24 h 10 min, job cost £340.20`: what a section is, beside its heading. */
export function sectionFigures({ figures }: Sheet, { entries }: Section): string {
  const { minutes, cost } = totalsOf(entries);
  const said = [
    counted(entries.length, 'entry', 'entries'),
    minutes !== 0 && figures.time(minutes),
    cost !== 0 && `job cost ${figures.money(cost)}`,
  ];
  return said.filter(Boolean).join(', ');
}

/** Where a year of a book begins. */
export function yearSection({ record }: RecordSheet, { slug }: EntryBook, year: string): Address {
  return sectionAddress(record, slug, `year-${year}`);
}
