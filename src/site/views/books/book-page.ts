/** A page of a book of entries: the whole of it, or one of its years where each has a page. */
import { isBudgeted } from '../../../journal/ledger/over-time.ts';
import { sumOf } from '../../../journal/ledger/sums.ts';
import { type Totals, totalsOf } from '../../../journal/ledger/totals.ts';
import type { Entry } from '../../../journal/record.ts';
import type { Address } from '../../addresses.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import type { SiteRecord } from '../../record.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { counted, leavesHoursOut } from '../page/words.ts';
import { bookYearAddress, type EntryBook, entryBooks, type Section, sectionAddress, yearsOf } from './entry-books.ts';
import { type EntryChoices, entryChoices } from './entry-choices.ts';
import { type RunningTotal, runningTotals } from './running-totals.ts';

/** All that a page of a book shows, but for names. */
export interface BookPage {
  readonly slug: string;
  readonly title: string;
  /** The one that it is of, in a book that has a page a year. */
  readonly year: string | null;
  /** How many entries it is about. */
  readonly count: number;
  readonly totals: Totals;
  /** What of it counts against budgets of money; null for a book of years. */
  readonly budgeted: number | null;
  /** The years of a whole book, where there are several: what each comes to, and where it begins. */
  readonly years: readonly { readonly year: string; readonly totals: Totals; readonly to: Address }[];
  /** What is listed, in years that are headed where the page is of a whole book of years; null where each year has a page of its own. */
  readonly listed: readonly ListedYear[] | null;
  /** By what it can be narrowed. */
  readonly choices: EntryChoices | null;
  /** What the whole book came to by past days, of those whose last entry is listed. */
  readonly running: readonly RunningTotal[];
}

export interface ListedYear {
  readonly year: string;
  readonly totals: Totals;
  readonly headed: boolean;
  readonly sections: readonly Section[];
}

/** A book of more than a month has its years. */
const isYearly = ({ slug }: EntryBook): boolean => !slug.startsWith('month-');

const PAGE = shown('book of entries', (sheet, name: string): BookPage => {
  const { book, year } = bookNamed(sheet.record, name);
  const years = yearsOf(book);
  const about = year === null ? years : years.filter((one) => one.year === year);
  const entries = year === null ? book.entries : about.flatMap((one) => one.entries);
  const onlyYears = book.split && year === null;
  return {
    slug: book.slug,
    title: book.title,
    year,
    count: entries.length,
    totals: totalsOf(entries),
    budgeted: isYearly(book) ? null : sumOf(entries.filter((entry) => isBudgeted(sheet.record.journal, entry))).gross,
    years: isYearly(book) && years.length > 1 && year === null ? years.map((one) => yearOfBook(sheet, book, one)) : [],
    choices: onlyYears ? null : entryChoices(sheet, entries),
    ...listedOf(sheet, book, onlyYears ? null : about, isYearly(book) && year === null),
  };
});

export const BOOK_QUESTIONS: readonly AnyQuestion[] = [PAGE];

/**
 * @param name the slug of a book, with `-2025` behind it for the page of one of its years
 * @throws RangeError where there is none
 */
export const bookPage = (sheet: Sheet, name: string): BookPage => sheet.ask(PAGE, name);

/** The name of every page of a book, but for the book of all. */
export function bookPageNames(record: SiteRecord): readonly string[] {
  return [...entryBooks(record).values()].flatMap((book) => [
    ...(book.slug === 'all' ? [] : [book.slug]),
    ...(book.split ? yearsOf(book).map(({ year }) => `${book.slug}-${year}`) : []),
  ]);
}

function bookNamed(record: SiteRecord, name: string): { readonly book: EntryBook; readonly year: string | null } {
  const books = entryBooks(record);
  const whole = books.get(name);
  if (whole) return { book: whole, year: null };
  const ofYear = books.get(name.slice(0, -'-2025'.length));
  if (ofYear === undefined) throw new RangeError(`there is no book of entries ${name}`);
  return { book: ofYear, year: name.slice(-'2025'.length) };
}

type YearOfBook = ReturnType<typeof yearsOf>[number];

/** What one year of a book comes to, and where it begins. */
function yearOfBook({ record }: RecordSheet, { slug, split }: EntryBook, { year, entries }: YearOfBook): BookPage['years'][number] {
  const to = split ? bookYearAddress(slug, year) : sectionAddress(record, slug, `year-${year}`);
  return { year, totals: totalsOf(entries), to };
}

function listedOf(
  { record }: RecordSheet,
  book: EntryBook,
  years: readonly YearOfBook[] | null,
  headed: boolean,
): Pick<BookPage, 'listed' | 'running'> {
  if (years === null) return { listed: null, running: [] };
  const listed = years.map(({ year, entries, sections }) => ({ year, totals: totalsOf(entries), headed, sections }));
  const entries = new Set<Entry>(years.flatMap((one) => one.entries));
  return { listed, running: isYearly(book) ? runningTotals(record, book).filter(({ last }) => entries.has(last)) : [] };
}

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

/** `24 h 10 min`; null of what takes no time, and in a copy that leaves hours out. */
export function hoursTold({ figures, copy }: Pick<Sheet, 'figures' | 'copy'>, { minutes }: Pick<Totals, 'minutes'>): string | null {
  return minutes === 0 || leavesHoursOut(copy) ? null : figures.time(minutes);
}
