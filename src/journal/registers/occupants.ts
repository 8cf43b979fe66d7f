import type { IsoDate, PartId, Position, Whereabouts } from '../model.ts';
import type { Moment, Stay } from '../record.ts';
import type { Occupant, Seated } from './occupant.ts';
import { originAt } from './origins.ts';
import { wasHere } from './outcome.ts';
import type { RegisterSource } from './source.ts';
import { compareMoments, deedsOf, occupantsOf, seatedOf, staysAsOf } from './stays.ts';

/** What is on the vehicle at a position at the end of a day, oldest first. */
export function fittedAt(record: RegisterSource, position: Position, date: IsoDate): readonly Occupant[] {
  return standing(occupantsOf(record, position.id), date).map((stay) => occupantOf(record, position, stay, date));
}

/** What stands at a position that is off the vehicle with what it is in, at the end of a day, oldest first. */
export function seatedAt(record: RegisterSource, position: Position, date: IsoDate): readonly Seated[] {
  return standing(seatedOf(record, position.id), date).map((stay) => ({
    ...occupantOf(record, position, stay, date),
    carrier: outermost(stay.where) ?? stay.part,
  }));
}

function standing(stays: readonly Stay[], date: IsoDate): readonly Stay[] {
  return staysAsOf(stays, date).filter(({ to }) => to === null);
}

function occupantOf(record: RegisterSource, position: Position, { part, count, which, from }: Stay, date: IsoDate): Occupant {
  return {
    part,
    count,
    which,
    since: inPlaceSince(record, position, part, from),
    origin: originAt(record, part, date),
    asFound: part === position.id && wasHere(record, part),
  };
}

/** Since when a part stands in its place: what the whole did moved it too, and changed nothing of that. */
function inPlaceSince(record: RegisterSource, position: Position, part: PartId, from: Moment): Moment {
  if (position.inside === null) return from;
  const same = compareMoments(record);
  const stays = [...occupantsOf(record, position.id), ...seatedOf(record, position.id)].filter((stay) => stay.part === part);
  const own = new Set(deedsOf(record, part).flatMap(({ did, session }) => (did === 'fitted' || did === 'removed' ? [session] : [])));
  let since = from;
  while (since.session !== null && !own.has(since.session)) {
    const before = stays.find(({ from: began, to }) => to && same(to, since) === 0 && same(began, since) < 0);
    if (!before) break;
    since = before.from;
  }
  return since;
}

/** The last part of a chain of parts in parts; null for what is in none. */
function outermost(where: Whereabouts): PartId | null {
  return where.at === 'in' ? (outermost(where.where) ?? where.part) : null;
}
