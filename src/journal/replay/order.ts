import { inSessionOrder } from '../model/session-order.ts';
import type { Session, SessionId } from '../model.ts';
import type { Moment } from '../record.ts';
import { compareText } from '../values/text-order.ts';

/** Sessions as they are replayed. The order of files read does not matter. */
export function sessionsInOrder(sessions: readonly Session[]): readonly Session[] {
  return [...sessions].sort(inSessionOrder);
}

/** Compares two moments: by date; on one day what the catalogue says comes before the sessions, which keep their order. */
export function momentOrder(rank: ReadonlyMap<SessionId, number>): (a: Moment, b: Moment) => number {
  const placeInDay = (moment: Moment) => (moment.session === null ? -1 : (rank.get(moment.session) ?? -1));
  return (a, b) => compareText(a.date, b.date) || placeInDay(a) - placeInDay(b);
}

/** The running number of each session in replay order. */
export function sessionRanks(sessions: readonly Session[]): ReadonlyMap<SessionId, number> {
  return new Map(sessionsInOrder(sessions).map((session, index) => [session.id, index]));
}
