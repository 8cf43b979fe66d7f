import type { LeaveOut } from '../../../journal/model.ts';
import type { JournalRecord } from '../../../journal/record.ts';
import { type Forgotten, type ForgottenKind, forgottenAt } from '../../../journal/registers/forgotten/forgotten.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { FORGOTTEN_WORDS } from './kinds.ts';

export interface ForgottenPage {
  readonly count: number;
  /** Kinds of which something is left out. */
  readonly some: readonly Forgotten[];
  /** What the others are called. */
  readonly none: readonly string[];
}

/** What cannot be told to be missing where the copy itself leaves it out. */
const UNTOLD: Readonly<Partial<Record<LeaveOut, readonly ForgottenKind[]>>> = {
  marks: ['unrecorded'],
  film: ['unrecorded', 'clips'],
  papers: ['bills'],
  money: ['bills', 'bought'],
  stores: ['unrecorded', 'fasteners', 'full-bags'],
};

/** What the notes leave out as they stand now, of the kinds that this copy can tell. */
export function forgottenOf(record: JournalRecord): readonly Forgotten[] {
  const withoutMoney: readonly LeaveOut[] = record.journal.settings.currency === null ? ['money'] : [];
  const untold = new Set([...record.copy.leavesOut, ...withoutMoney].flatMap((kind) => UNTOLD[kind] ?? []));
  return forgottenAt(record, null).filter(({ kind }) => !untold.has(kind));
}

export function forgottenPage({ record }: RecordSheet): ForgottenPage {
  const all = forgottenOf(record);
  return {
    count: countOf(all),
    some: all.filter(({ missed }) => missed.length > 0),
    none: all.filter(({ missed }) => missed.length === 0).map(({ kind }) => FORGOTTEN_WORDS[kind].head.toLowerCase()),
  };
}

export function countOf(all: readonly Forgotten[]): number {
  return all.reduce((sum, { missed }) => sum + missed.length, 0);
}
