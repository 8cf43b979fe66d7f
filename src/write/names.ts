/** The names that a form offers, and which of them an evening most likely needs. */
import type { Sort } from '../journal/diagnostics/diagnostic.ts';
import { firmsIn, whichFirm } from '../journal/model/which-firm.ts';
import type { JournalRecord } from '../journal/record.ts';
import { bagsAt, unnamedIn } from '../journal/registers/bags.ts';
import type { Opened } from './desk.ts';
import type { FormField } from './form.ts';
import { readNote } from './note-text.ts';
import { isGroup, type Value, type Values } from './values.ts';

/** Something that a field may name. */
export interface Named {
  /** What is written. */
  readonly id: string;
  /** What it is called; empty where the id says it. */
  readonly name: string;
}

export type Names = { readonly [Each in Sort]?: readonly Named[] };

/** How many of the last evenings say what is likely. */
const LAST_EVENINGS = 5;
/** How many notes say which fields are in use. */
const NOTES_READ = 40;

export function namesOf(record: JournalRecord): Names {
  const { journal, history } = record;
  const parts = [...journal.parts.values()].map(({ id, name }) => ({ id, name }));
  const open = [...history.items.values()].filter(({ closed }) => closed === null);
  const bags = bagsAt(record, null);
  const nameOf = (id: string) => journal.parts.get(id)?.name ?? id;
  return {
    part: parts,
    position: [...journal.positions.values()].map(({ id, name }) => ({ id, name })),
    person: [...journal.people.values()].map(({ id, name }) => ({ id, name })),
    subsystem: [...journal.subsystems.values()].map(({ id, name }) => ({ id, name })),
    milestone: journal.milestones.map(({ id, name }) => ({ id, name })),
    consumable: [...journal.consumables.values()].map(({ id, name }) => ({ id, name })),
    store: journal.stores.map((id) => ({ id, name: '' })),
    item: open.map(({ id, opening }) => ({ id, name: opening.what })),
    bag: bags
      .filter(({ emptied }) => emptied === null)
      .map((row) => ({ id: String(row.bag), name: [...row.filling.holds, ...unnamedIn(row, nameOf)].join(', ') })),
    session: journal.sessions.toReversed().map(({ id, title }) => ({ id, name: title })),
  };
}

/** The number that no bag has had. */
export function nextBag(record: JournalRecord): number {
  return Math.max(0, ...record.history.bags.keys()) + 1;
}

/** Firms as the notes call them, the newest first, each as it was called last: sellers, who was sent something, whom something is awaited from. */
export function firmsOf({ journal }: JournalRecord): string[] {
  const called = journal.sessions.flatMap(firmsIn).toReversed();
  const seen = new Set<string | null>([null]);
  return called.flatMap((one) => {
    const which = whichFirm(journal, one);
    if (one.firm === null || seen.has(which)) return [];
    seen.add(which);
    return [one.firm];
  });
}

/** Parts that the last evenings were about, the newest first. */
export function lastParts(record: JournalRecord): string[] {
  const last = record.journal.sessions.slice(-LAST_EVENINGS).toReversed();
  return [...new Set(last.flatMap(({ parts }) => parts.map(({ part }) => part)))];
}

/** How often a field is written: in one note of how many, or in one entry of how many. By the way to it, `parts/did`. */
export type Use = Readonly<Record<string, number>>;

/** Counts what the last notes say, so that a form shows first what this journal uses. */
export function useOf({ sources }: Opened, form: readonly FormField[]): Use {
  const notes = sources.files.filter(({ path }) => path.startsWith('sessions/')).slice(-NOTES_READ);
  const read = notes
    .map(({ path, bytes }) => readNote(new TextDecoder().decode(bytes), path, form)?.fields)
    .filter((one) => one !== undefined);
  const [written, entries] = [new Map<string, number>(), new Map<string, number>([['', read.length]])];
  for (const fields of read) count(fields, '', written, entries);
  const shares = [...written].map(([way, times]) => [way, times / (entries.get(way.slice(0, Math.max(0, way.lastIndexOf('/')))) ?? 1)]);
  return Object.fromEntries(shares);
}

function count(values: Values, under: string, written: Map<string, number>, entries: Map<string, number>): void {
  for (const [name, value] of Object.entries(values)) {
    const way = under === '' ? name : `${under}/${name}`;
    written.set(way, (written.get(way) ?? 0) + 1);
    for (const item of groupsIn(value)) {
      entries.set(way, (entries.get(way) ?? 0) + 1);
      count(item, way, written, entries);
    }
  }
}

function groupsIn(value: Value): Values[] {
  return Array.isArray(value) ? value.filter((one): one is Values => isGroup(one)) : [];
}
