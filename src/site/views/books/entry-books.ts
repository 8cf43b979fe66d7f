/**
 * The pages that figures of the ledger open onto: all entries of a subsystem, a month, a kind, a person, a rate of tax,
 * and of the whole, each in sections with their totals. A book that would be too long for one page has a
 * page a year, and its first page adds the years up.
 */

import { soldWords, standingWords } from '../../../exports/tax-words.ts';
import { type StandingRow, taxStandings } from '../../../journal/ledger/tax-standing.ts';
import { ENTRY_KINDS, type EntryKind, GENERAL } from '../../../journal/model.ts';
import type { Entry, JournalRecord } from '../../../journal/record.ts';
import { monthOf, yearOf } from '../../../journal/values/date.ts';
import { toDecimal } from '../../../journal/values/decimal.ts';
import { once } from '../../../journal/values/once.ts';
import { type Address, PAGES } from '../../addresses.ts';
import { figuresOf } from '../page/figures.ts';
import { capital, ENTRY_KIND_WORDS, leavesHoursOut } from '../page/words.ts';

/** More entries than this, and the book has a page a year. */
const ONE_PAGE = 400;

export interface Section {
  /** Its anchor. */
  readonly id: string;
  readonly title: string;
  readonly entries: readonly Entry[];
}

export interface EntryBook {
  /** `all`, `subsystem-brakes`, `month-2025-03`, `kind-labour`, `person-rh`, `tax-20` */
  readonly slug: string;
  readonly title: string;
  readonly entries: readonly Entry[];
  readonly sections: readonly Section[];
  /** True when it has a page a year. */
  readonly split: boolean;
}

/** Every book of the ledger by its slug. */
export const entryBooks: (record: JournalRecord) => ReadonlyMap<string, EntryBook> = once(
  (record) => new Map(makeBooks(record).map((book) => [book.slug, book])),
  ({ ledger }) => ledger,
);

function makeBooks({ journal, ledger, copy }: JournalRecord): EntryBook[] {
  const { entries } = ledger;
  const figures = figuresOf(journal.settings);
  const byMonth = (of: readonly Entry[]): Section[] =>
    [...Map.groupBy(of, ({ date }) => monthOf(date))].map(([id, list]) => ({ id, title: figures.month(id), entries: list }));
  const nameOf = (id: string) => journal.subsystems.get(id)?.name ?? (id === GENERAL ? 'General' : id);
  const bySubsystem = (of: readonly Entry[]): Section[] => {
    const groups = Map.groupBy(of, ({ subsystem }) => subsystem);
    const order = [...journal.subsystems.keys(), ...[...groups.keys()].filter((id) => !journal.subsystems.has(id))];
    return order.flatMap((id) => (groups.has(id) ? [{ id, title: nameOf(id), entries: groups.get(id) ?? [] }] : []));
  };
  const book = (slug: string, title: string, of: readonly Entry[], sections = byMonth(of)): EntryBook => ({
    slug,
    title,
    entries: of,
    sections,
    split: of.length > ONE_PAGE,
  });
  const grouped = (key: (entry: Entry) => string | null) =>
    Map.groupBy(
      entries.filter((one) => key(one) !== null),
      (one) => key(one) ?? '',
    );
  const kinds = grouped(({ kind }) => kind);
  const people = grouped(({ person }) => person);
  const subsystems = grouped(({ subsystem }) => subsystem);
  const ids = new Set([...journal.subsystems.keys(), ...subsystems.keys()]);
  return [
    book('all', 'All entries', entries),
    ...[...ids].map((id) => book(`subsystem-${id}`, nameOf(id), subsystems.get(id) ?? [])),
    ...[...grouped(({ date }) => monthOf(date))].map(([month, of]) => book(`month-${month}`, figures.month(month), of, bySubsystem(of))),
    ...ENTRY_KINDS.filter((kind) => kind !== 'vehicle' && kinds.has(kind)).map((kind) =>
      book(`kind-${kind}`, kindTitle(kind), kinds.get(kind) ?? []),
    ),
    // What a person books is hours: without them each would have a page that says that there were none.
    ...(leavesHoursOut(copy) ? [] : [...journal.people.values()].map(({ id, name }) => book(`person-${id}`, name, people.get(id) ?? []))),
    ...(figures.hasMoney ? taxBooks(entries, book) : []),
  ];
}

/** What was paid, and what was sold, by how it stands to tax. */
function taxBooks(entries: readonly Entry[], book: (slug: string, title: string, of: readonly Entry[]) => EntryBook): EntryBook[] {
  const sold = (isSold: boolean) => taxStandings(entries.filter(({ paid, kind }) => paid && (kind === 'sale') === isSold));
  return [
    ...sold(false).map((row) => book(taxSlug(row), `Paid, by tax: ${standingWords(row)}`, row.sum.entries)),
    ...sold(true).map((row) => book(soldAtSlug(row), soldWords(row), row.sum.entries)),
  ];
}

/** `tax-17-5`, `tax-exempt` */
export function taxSlug({ standing, rate }: Pick<StandingRow, 'standing' | 'rate'>): string {
  return `tax-${rate === null ? standing : toDecimal(rate.mul(100), 6).replace('.', '-')}`;
}

export const soldAtSlug = (row: Pick<StandingRow, 'standing' | 'rate'>): string => `sold-${taxSlug(row)}`;

function kindTitle(kind: EntryKind): string {
  return capital(ENTRY_KIND_WORDS[kind]);
}

/** The years of a book, oldest first, each with its entries and sections. */
export function yearsOf(
  book: EntryBook,
): readonly { readonly year: string; readonly sections: readonly Section[]; readonly entries: readonly Entry[] }[] {
  const sections = Map.groupBy(book.sections, ({ entries }) => yearOf(entries[0]?.date ?? ''));
  return [...sections].map(([year, list]) => ({ year, sections: list, entries: list.flatMap(({ entries }) => entries) }));
}

/** The first page of a book; figures of its whole lead here. */
export function bookAddress(slug: string): Address {
  return slug === 'all' ? PAGES.entries : `ledger/entries/${slug}.html`;
}

/** The page of one year of a split book. */
export function bookYearAddress(slug: string, year: string): Address {
  return `ledger/entries/${slug}-${year}.html`;
}

/**
 * Where the entries of a section are listed. Nothing was booked there: the first page of the book.
 *
 * @param section a month (`2025-03`), a year (`year-2025`), or a subsystem in the book of a month
 */
export function sectionAddress(record: JournalRecord, slug: string, section: string): Address {
  const book = entryBooks(record).get(slug);
  if (!book?.split || slug.startsWith('month-')) return `${bookAddress(slug)}#${section}`;
  const year = section.replace('year-', '').slice(0, 4);
  return `${bookYearAddress(slug, year)}${section.startsWith('year-') ? '' : `#${section}`}`;
}
