import type { IsoDate, PartId, PositionId, Session, SessionId, Whereabouts } from '../model.ts';
import type { Deed, Moment, Stay } from '../record.ts';
import { momentOrder, sessionRanks, sessionsInOrder } from '../replay/order.ts';
import { whereKey } from '../replay/words.ts';
import { groupedBy, perRecord, type RegisterSource } from './source.ts';

/** Sessions in replay order. */
export const orderedSessions: (record: RegisterSource) => readonly Session[] = perRecord((record) =>
  sessionsInOrder(record.journal.sessions),
);

/** The running number of each session in replay order. */
export const rankOf: (record: RegisterSource) => ReadonlyMap<SessionId, number> = perRecord((record) =>
  sessionRanks(record.journal.sessions),
);

/** Compares moments of this record: by date, and on one day by session. */
export const compareMoments: (record: RegisterSource) => (a: Moment, b: Moment) => number = perRecord((record) =>
  momentOrder(rankOf(record)),
);

/** Deeds by part, in order. */
export const deedsByPart: (record: RegisterSource) => ReadonlyMap<PartId, readonly Deed[]> = perRecord((record) =>
  groupedBy(record.history.deeds, (deed) => deed.part),
);

export function deedsOf(record: RegisterSource, part: PartId): readonly Deed[] {
  return deedsByPart(record).get(part) ?? [];
}

export function staysOf(record: RegisterSource, part: PartId): readonly Stay[] {
  return record.history.stays.get(part) ?? [];
}

export function occupantsOf(record: RegisterSource, position: PositionId): readonly Stay[] {
  return record.history.occupants.get(position) ?? [];
}

const seatedByPosition = perRecord((record) =>
  groupedBy([...record.history.stays.values()].flat(), ({ where }) => (where.at === 'in' ? where.position : null)),
);

/** The stays of what stood at a position in a part that was off the vehicle. */
export function seatedOf(record: RegisterSource, position: PositionId): readonly Stay[] {
  return seatedByPosition(record).get(position) ?? [];
}

/** True when the stay is what holds at the end of that day. */
export function covers(stay: Stay, date: IsoDate): boolean {
  return stay.from.date <= date && (stay.to === null || stay.to.date > date);
}

/**
 * Stays as they looked at the end of a day: those begun by then, with an end only when that had come. What
 * came together and left at different times later is still one.
 */
export function staysAsOf(stays: readonly Stay[], date: IsoDate): readonly Stay[] {
  const known = new Map<string, Stay>();
  for (const stay of stays) {
    if (stay.from.date > date) continue;
    const to = stay.to && stay.to.date <= date ? stay.to : null;
    // Only the place may have any letter in it.
    const key = `${stay.part} ${momentKey(stay.from)} ${to && momentKey(to)} ${whereKey(stay.where)}`;
    const before = known.get(key);
    const which = before ? bothOf(before.which, stay.which) : stay.which;
    known.set(key, { ...stay, to, which, count: stay.count + (before?.count ?? 0) });
  }
  return [...known.values()];
}

const momentKey = ({ date, session }: Moment): string => `${date} ${session}`;

/** So many of a part at one place. */
export interface Whereat {
  readonly where: Whereabouts;
  readonly count: number;
  /** Which of a numbered lot, smallest first; null where they cannot be told apart. */
  readonly which: readonly number[] | null;
  /** Since when the first of them are there. */
  readonly since: Moment;
  /** When the last of them came: the same where they came together. */
  readonly last: Moment;
}

/** Where a part is at the end of a day: one row a place, oldest first; counts add up to the part's count. */
export function whereaboutsAt(record: RegisterSource, part: PartId, date: IsoDate): readonly Whereat[] {
  const compare = compareMoments(record);
  const places = new Map<string, Whereat>();
  for (const stay of staysOf(record, part)) {
    if (!covers(stay, date)) continue;
    const key = whereKey(stay.where);
    const place = places.get(key);
    const which = place ? bothOf(place.which, stay.which) : stay.which;
    const [since, last] = [place?.since ?? stay.from, place?.last ?? stay.from];
    places.set(key, {
      where: stay.where,
      count: stay.count + (place?.count ?? 0),
      which,
      since: compare(stay.from, since) < 0 ? stay.from : since,
      last: compare(stay.from, last) > 0 ? stay.from : last,
    });
  }
  return [...places.values()];
}

function bothOf(some: readonly number[] | null, others: readonly number[] | null): readonly number[] | null {
  return some && others && [...some, ...others].sort((a, b) => a - b);
}
