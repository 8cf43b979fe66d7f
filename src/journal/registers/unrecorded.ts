import type { IsoDate, Part, PartId, PositionId, SessionId } from '../model.ts';
import type { Deed, Moment } from '../record.ts';
import { type Observation, observationsOf } from './observations.ts';
import { type At, dateOf, type RegisterSource } from './source.ts';
import { compareMoments, covers, deedsOf, staysOf } from './stays.ts';

/** A part that came off the vehicle and of which neither marks nor a picture were recorded since. */
export interface Unrecorded {
  readonly part: PartId;
  readonly position: PositionId;
  /** When it last came off. */
  readonly off: { readonly session: SessionId; readonly date: IsoDate };
  /** When it went back on; null for what is off now. */
  readonly backOn: { readonly session: SessionId; readonly date: IsoDate } | null;
}

/** The two lists to work down before the lid closes, each in catalogue order. */
export interface UnrecordedLists {
  /** Off now, and still without marks or a picture: there is time. */
  readonly offNow: readonly Unrecorded[];
  /** Back on the vehicle without either. */
  readonly backOn: readonly Unrecorded[];
}

/** What lacks a record at the end of a day. Marks, the action `marked` and pictures count from the session it came off in. */
export function unrecordedAt(record: RegisterSource, at: At): UnrecordedLists {
  const date = dateOf(record, at);
  const lacking = [...record.journal.parts.values()].flatMap((part) => lackOf(record, part, date) ?? []);
  return {
    offNow: lacking.filter(({ backOn }) => backOn === null),
    backOn: lacking.filter(({ backOn }) => backOn !== null),
  };
}

function lackOf(record: RegisterSource, part: Part, date: IsoDate): Unrecorded | null {
  const deeds = deedsOf(record, part.id).filter((deed) => deed.date <= date);
  const off = deeds.findLast(({ did }) => did === 'removed');
  if (!off) return null;
  const here = staysOf(record, part.id).filter((stay) => covers(stay, date));
  const isOff = here.some(({ where }) => where.at === 'stores' || where.at === 'bag' || where.at === 'out');
  const backOn = deeds.slice(deeds.indexOf(off)).find(({ did }) => did === 'fitted') ?? null;
  if (!isOff && backOn === null) return null;
  if (observationsOf(record, part.id).some((seen) => seen.date <= date && isRecord(record, seen, off))) return null;
  return {
    part: part.id,
    position: off.position,
    off: whenOf(off),
    backOn: backOn === null || isOff ? null : whenOf(backOn),
  };
}

function isRecord(record: RegisterSource, seen: Observation, since: Moment): boolean {
  return (seen.marks !== null || seen.marked || seen.picture !== null) && compareMoments(record)(seen, since) >= 0;
}

function whenOf({ session, date }: Deed): { session: SessionId; date: IsoDate } {
  return { session, date };
}
