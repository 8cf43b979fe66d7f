import type { IsoDate } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { once } from '../values/once.ts';

/** What registers read: the whole record, or what the checks have of it before the ledger is made. */
export type RegisterSource = Pick<JournalRecord, 'journal' | 'history' | 'day'>;

/** The end of a day; null is the record's day. */
export type At = IsoDate | null;

export function dateOf(record: RegisterSource, at: At): IsoDate {
  return at ?? record.day;
}

/**
 * An index that is built once for each record and then looked up, so that rendering thousands of
 * positions costs no more than one pass. It may depend on the journal and its history, never on its day.
 */
export function perRecord<T>(build: (record: RegisterSource) => T): (record: RegisterSource) => T {
  return once(build, ({ history }) => history);
}

/** Gathers things under a key, keys and things in the order they come. */
export function groupedBy<T, K>(things: Iterable<T>, keyOf: (thing: T) => K): Map<K, T[]> {
  const groups = new Map<K, T[]>();
  for (const thing of things) {
    const group = groups.get(keyOf(thing));
    if (group) group.push(thing);
    else groups.set(keyOf(thing), [thing]);
  }
  return groups;
}
