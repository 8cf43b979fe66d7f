/** What the notes leave out and somebody would miss: each with the place where it belongs and what to write there. */
import type { IsoDate, ItemId, PartId, Place } from '../../model.ts';
import type { Moment } from '../../record.ts';
import { type At, dateOf, perRecord, type RegisterSource } from '../source.ts';
import { compareMoments } from '../stays.ts';
import { bagsNeverEmptied, fastenersMissing } from './of-bags.ts';
import { billsWithoutPaper, clipsWithoutMarks, named, picturesWithoutWords } from './of-notes.ts';
import { boughtAndNotHere, candidatesUndecided, notConfirmed, pastDue, unrecorded, withoutReason } from './of-parts.ts';

export type Subject =
  | { readonly part: PartId }
  | { readonly bag: number }
  | { readonly item: ItemId }
  /** A file, a bill: what the note calls it. */
  | { readonly name: string };

/** One thing that is left out. */
export interface Missed {
  readonly about: Subject;
  /** What is lacking, as the rest of a sentence about it. */
  readonly lacks: string;
  readonly at: Moment;
  readonly place: Place;
  /** What to write: a field or an entry, where `…` stands for what only the writer knows. */
  readonly write: string;
}

/** Everything of one kind, the oldest first. */
export interface Forgotten {
  readonly kind: ForgottenKind;
  readonly missed: readonly Missed[];
}

type Finder = (record: RegisterSource, date: IsoDate) => readonly Missed[];

/** In the order of a page: what cannot be made good later comes first. */
const KINDS = {
  unrecorded,
  'not-confirmed': notConfirmed,
  fasteners: fastenersMissing,
  'full-bags': bagsNeverEmptied,
  bills: billsWithoutPaper,
  pictures: picturesWithoutWords,
  clips: clipsWithoutMarks,
  reasons: withoutReason,
  undecided: candidatesUndecided,
  bought: boughtAndNotHere,
  'past-due': pastDue,
  named,
} as const satisfies Record<string, Finder>;

export type ForgottenKind = keyof typeof KINDS;

/** What notes up to the end of a day leave out, every kind, those of which there is nothing too. */
export function forgottenAt(record: RegisterSource, at: At): readonly Forgotten[] {
  const date = dateOf(record, at);
  const known = byDay(record).get(date);
  if (known) return known;
  const order = compareMoments(record);
  const all = Object.entries(KINDS).map(([kind, find]) => ({
    kind: kind as ForgottenKind,
    missed: [...find(record, date)].sort((a, b) => order(a.at, b.at)),
  }));
  byDay(record).set(date, all);
  return all;
}

const byDay = perRecord(() => new Map<IsoDate, readonly Forgotten[]>());
