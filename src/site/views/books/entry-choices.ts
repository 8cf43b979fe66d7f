/** By what a page of entries can be narrowed, and how many each choice leaves. */
import { ENTRY_KINDS } from '../../../journal/model.ts';
import type { Entry } from '../../../journal/record.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { capital, ENTRY_KIND_WORDS } from '../page/words.ts';

export interface EntryChoice {
  readonly value: string;
  readonly words: string;
  readonly count: number;
}

export interface EntryChoices {
  /** By the word that the cell of a row has. */
  readonly kinds: readonly EntryChoice[];
  readonly subsystems: readonly EntryChoice[];
}

/** Null where there is too little to look through. */
export function entryChoices(sheet: RecordSheet, entries: readonly Entry[]): EntryChoices | null {
  if (entries.length < 20) return null;
  const [kinds, subsystems] = [Map.groupBy(entries, ({ kind }) => kind), Map.groupBy(entries, ({ subsystem }) => subsystem)];
  const declared = new Set([...sheet.record.journal.subsystems.keys(), ...subsystems.keys()]);
  return {
    kinds: ENTRY_KINDS.flatMap((kind) => {
      const words = capital(ENTRY_KIND_WORDS[kind]);
      const of = kinds.get(kind);
      return of ? [{ value: words, words, count: of.length }] : [];
    }),
    subsystems: [...declared].flatMap((id) => {
      const of = subsystems.get(id);
      return of ? [{ value: id, words: sheet.subsystemName(id), count: of.length }] : [];
    }),
  };
}
