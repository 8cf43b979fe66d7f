/** In whose keeping the vehicle stood on a day, and what stayed behind when it passed on. */
import type { IsoDate, PartId, PersonId, Whereabouts } from '../model.ts';
import type { Stay } from '../record.ts';
import { type HandOver, type Keeping, keepingsOf } from '../replay/keepers.ts';
import { isHere, whereKey } from '../replay/words.ts';
import { originAt } from './origins.ts';
import { type At, dateOf, perRecord, type RegisterSource } from './source.ts';
import { compareMoments, covers, staysOf } from './stays.ts';

export type { HandOver, Keeping } from '../replay/keepers.ts';

/** Every keeping, oldest first; never empty. */
export const keepings: (record: RegisterSource) => readonly Keeping[] = perRecord(({ journal }) => keepingsOf(journal));

/** The keepings that had begun by the end of a day. */
export function keepingsAt(record: RegisterSource, at: At): readonly Keeping[] {
  const date = dateOf(record, at);
  return keepings(record).filter(({ by, from }) => by === null || from <= date);
}

/** Whose keeping it stood in at the end of a day; null where nobody said. */
export function keeperAt(record: RegisterSource, at: At): PersonId | null {
  return keepingsAt(record, at).at(-1)?.keeper ?? null;
}

/** The hand-overs of a session. */
export function handOversOf(record: RegisterSource, session: string): readonly HandOver[] {
  return keepings(record).flatMap(({ by }) => (by?.session.id === session ? [by] : []));
}

/** Who has a thing that is off the vehicle and stayed behind when the vehicle passed on. */
export interface StayedWith {
  /** Null where the journal does not say who that was. */
  readonly keeper: PersonId | null;
  /** The day on which it stayed behind. */
  readonly since: IsoDate;
}

/**
 * With whom a thing off the vehicle stayed, at the end of a day; null for what is with the vehicle's keeper. What a note
 * moves after the hand-over is with whoever keeps the vehicle then. What lies in another thing is where that is.
 */
export function stayedWith(record: RegisterSource, part: PartId, where: Whereabouts, at: At): StayedWith | null {
  if (where.at === 'in') return stayedWith(record, where.part, where.where, at);
  const date = dateOf(record, at);
  const all = keepingsAt(record, date);
  if (all.length < 2 || where.at === 'fitted' || !isKept(where)) return null;
  const stay = staysOf(record, part).find((one) => covers(one, date) && whereKey(one.where) === whereKey(where));
  return stay === undefined ? null : holderOf(record, stay, all);
}

/** Follows a thing that lies where it lay through every hand-over since. */
function holderOf(record: RegisterSource, stay: Stay, all: readonly Keeping[]): StayedWith | null {
  const order = compareMoments(record);
  const before = (one: Keeping) => one.by === null || order({ date: one.from, session: one.by.session.id }, stay.from) < 0;
  const first = Math.max(0, all.findLastIndex(before));
  let held: { readonly keeper: PersonId | null; readonly nth: number; readonly since: IsoDate } = {
    keeper: all[first]?.keeper ?? null,
    nth: first,
    since: stay.from.date,
  };
  for (const [nth, { keeper, by, from }] of all.entries()) {
    if (nth <= first || by === null || !isWith(held, by.from, nth - 1)) continue;
    const goes = goesAlong(record, stay.part, by);
    held = goes ? { keeper, nth, since: from } : { ...held, since: from };
  }
  const now = all.at(-1);
  return isWith(held, now?.keeper ?? null, all.length - 1) ? null : { keeper: held.keeper, since: held.since };
}

/** The same person, or of nobody named the same keeping. */
function isWith(held: { readonly keeper: PersonId | null; readonly nth: number }, keeper: PersonId | null, nth: number): boolean {
  return held.keeper === null ? held.nth === nth : held.keeper === keeper;
}

/** Originals go with the vehicle unless the note says that they stay; of the rest what it names. What is lent goes alone. */
export function goesAlong(record: RegisterSource, part: PartId, { entry, session }: Pick<HandOver, 'entry' | 'session'>): boolean {
  if (entry.goes.includes(part)) return true;
  if (entry.stays.includes(part) || entry.how === 'lent') return false;
  return originAt(record, part, session.date) === 'original';
}

function isKept(where: Whereabouts): boolean {
  return isHere(where) && where.at !== 'gone' && where.at !== 'missing';
}
