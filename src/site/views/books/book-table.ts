/** What the books of the ledger came to at a day, a row each, in the order in which the journal declares them. */

import type { LedgerAt } from '../../../journal/ledger/ledger-at.ts';
import type { Totals } from '../../../journal/ledger/totals.ts';
import { ENTRY_KINDS } from '../../../journal/model.ts';
import { peopleInOrder, subsystemsInOrder } from '../page/facts.ts';
import { linked } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { capital, ENTRY_KIND_WORDS, leavesHoursOut } from '../page/words.ts';
import { type Column, rows, type SetTable, setTable } from '../tables/table.ts';
import type { OpenBook } from './open-book.ts';

export interface BookRow {
  /** Of the book of entries. */
  readonly slug: string;
  readonly name: string;
  readonly totals: Totals;
}

/** Subsystems with an entry. */
export function subsystemRows(sheet: Sheet, { bySubsystem }: LedgerAt): BookRow[] {
  const order = new Set([...subsystemsInOrder(sheet), ...bySubsystem.keys()]);
  return rowsOf(order, bySubsystem, 'subsystem', sheet.subsystemName);
}

export function kindRows({ byKind }: LedgerAt): BookRow[] {
  // The price of the vehicle itself is in neither view, and has a place of its own.
  return rowsOf(
    ENTRY_KINDS.filter((kind) => kind !== 'vehicle'),
    byKind,
    'kind',
    (kind) => capital(ENTRY_KIND_WORDS[kind]),
  );
}

/** People with hours. */
export function personRows(sheet: Sheet, { byPerson }: LedgerAt): BookRow[] {
  return rowsOf(peopleInOrder(sheet), byPerson, 'person', sheet.personName);
}

function rowsOf<Key extends string>(
  order: Iterable<Key>,
  totals: ReadonlyMap<Key, Totals>,
  book: string,
  nameOf: (key: Key) => string,
): BookRow[] {
  return [...order].flatMap((key) => {
    const of = totals.get(key);
    return of ? [{ slug: `${book}-${key}`, name: nameOf(key), totals: of }] : [];
  });
}

/**
 * Books of entries one a line with what they came to: by subsystem, by kind, by person.
 *
 * @param whole the last line: what all of them come to, where every entry is in one of them
 */
export function bookTable(sheet: Sheet, books: readonly BookRow[], head: string, open: OpenBook, whole: Totals | null = null): SetTable {
  const { hours, amount, hasMoney } = sheet.figures;
  const figure = (name: string, of: (totals: Totals) => number, written: (n: number) => string): Column<BookRow, Totals> => ({
    head: name,
    set: 'num',
    cell: ({ slug, totals }) => of(totals) !== 0 && linked(written(of(totals)), open(slug)),
    sum: (totals) => of(totals) !== 0 && linked(written(of(totals)), open('all')),
  });
  return setTable<BookRow, Totals>({
    label: `Totals by ${head.toLowerCase()}`,
    set: 'account totals',
    keepsRows: true,
    columns: [
      { head, names: true, cell: ({ name }) => name },
      !leavesHoursOut(sheet.copy) && figure('Hours', ({ minutes }) => minutes, hours),
      hasMoney && figure('Paid', ({ paid }) => paid, amount),
      hasMoney && figure('Job cost', ({ cost }) => cost, amount),
    ],
    groups: rows<BookRow, Totals>(books),
    foot: whole ? [{ words: 'Total', sum: whole }] : [],
  });
}
