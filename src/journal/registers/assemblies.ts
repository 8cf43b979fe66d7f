import type { PartId, PositionId, Whereabouts } from '../model.ts';
import type { Moment, Stay } from '../record.ts';
import { type At, dateOf, groupedBy, perRecord, type RegisterSource } from './source.ts';
import { covers, staysOf } from './stays.ts';

/** A part that stands in another one, and at which place in it. */
export interface Inside {
  readonly part: PartId;
  readonly position: PositionId;
  readonly where: Whereabouts;
  readonly count: number;
  /** Since when it is where it is: what the whole does moves it too. */
  readonly since: Moment;
  /** What is in this one in turn. */
  readonly holds: readonly Inside[];
}

/** The part that a part stands in; null where it stands in none. */
export function carrierOf(where: Whereabouts): PartId | null {
  if (where.at === 'in') return where.part;
  return where.at === 'fitted' ? (where.within ?? null) : null;
}

/** The parts that a part was ever in. */
export function carriersOf(record: RegisterSource, part: PartId): readonly PartId[] {
  return [...new Set(staysOf(record, part).flatMap(({ where }) => carrierOf(where) ?? []))];
}

const staysByCarrier = perRecord((record) => groupedBy([...record.history.stays.values()].flat(), ({ where }: Stay) => carrierOf(where)));

/** What is in a part at the end of a day, and in what is in it, in catalogue order. */
export function insideAt(record: RegisterSource, part: PartId, at: At): readonly Inside[] {
  const date = dateOf(record, at);
  return (staysByCarrier(record).get(part) ?? []).flatMap((stay) => {
    const place = stay.where;
    if (!covers(stay, date) || (place.at !== 'in' && place.at !== 'fitted')) return [];
    const { part: id, count, from: since } = stay;
    return [{ part: id, position: place.position, where: place, count, since, holds: insideAt(record, id, date) }];
  });
}
