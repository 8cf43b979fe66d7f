/** Every figure is a sum of entries, and keeps the entries it sums. */
import type { IsoDate, Minor } from '../model.ts';
import type { Entry, JournalRecord } from '../record.ts';

/** What the views of the ledger read of a record. */
export type LedgerSource = Pick<JournalRecord, 'journal' | 'ledger'>;

/** Which of the two views: money that went out, or what the job cost. */
export type View = 'paid' | 'cost';

/** A figure with what it sums. gross = net + tax. */
export interface Sum {
  readonly minutes: number;
  readonly net: Minor;
  readonly tax: Minor;
  readonly gross: Minor;
  readonly entries: readonly Entry[];
}

/** The sum of entries. */
export function sumOf(entries: readonly Entry[]): Sum {
  let [minutes, net, tax, gross] = [0, 0, 0, 0];
  for (const entry of entries) {
    minutes += entry.minutes ?? 0;
    net += entry.net;
    tax += entry.tax;
    gross += entry.gross;
  }
  return { minutes, net, tax, gross, entries };
}

/** Sums by a key, in the order in which keys first come; entries whose key is null are left out. */
export function sumBy<Key extends string>(entries: readonly Entry[], key: (entry: Entry) => Key | null): Map<Key, Sum> {
  const groups = new Map<Key, Entry[]>();
  for (const entry of entries) {
    const of = key(entry);
    if (of === null) continue;
    const group = groups.get(of);
    if (group) group.push(entry);
    else groups.set(of, [entry]);
  }
  return new Map([...groups].map(([of, group]) => [of, sumOf(group)]));
}

/** The entries up to a day and of it, or all of them; they are in order of date. */
export function entriesAt({ ledger }: Pick<LedgerSource, 'ledger'>, at: IsoDate | null): readonly Entry[] {
  return at === null ? ledger.entries : ledger.entries.slice(0, firstAfter(ledger.entries, at));
}

function firstAfter(entries: readonly Entry[], at: IsoDate): number {
  let [low, high] = [0, entries.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((entries[middle]?.date ?? '') <= at) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** The entries of one view at a date. */
export function viewAt(books: Pick<LedgerSource, 'ledger'>, view: View, at: IsoDate | null): Entry[] {
  return entriesAt(books, at).filter((entry) => entry[view]);
}
