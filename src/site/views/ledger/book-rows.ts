/** What the books of the ledger came to at a day, a row each, in the order in which the journal declares them. */
import type { LedgerAt } from '../../../journal/ledger/ledger-at.ts';
import type { Totals } from '../../../journal/ledger/totals.ts';
import { ENTRY_KINDS } from '../../../journal/model.ts';
import type { Sheet } from '../page/sheet.ts';
import { capital, ENTRY_KIND_WORDS } from '../page/words.ts';

export interface BookRow {
  /** Of the book of entries. */
  readonly slug: string;
  readonly name: string;
  readonly totals: Totals;
}

/** Subsystems with an entry. */
export function subsystemRows(sheet: Sheet, { bySubsystem }: LedgerAt): BookRow[] {
  const declared = [...sheet.record.journal.subsystems.keys()];
  const order = new Set([...declared, ...bySubsystem.keys()]);
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
  return rowsOf(sheet.record.journal.people.keys(), byPerson, 'person', sheet.personName);
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
