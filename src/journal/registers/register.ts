import type { Decision, IsoDate, Position, PositionId, SubsystemId } from '../model.ts';
import type { Moment } from '../record.ts';
import { type BackOtherwise, backOtherwiseAt } from './back-otherwise.ts';
import { decidedCount, decisionsInForce, type InForce } from './decisions-in-force.ts';
import { asideOf, isInQuestion } from './in-question.ts';
import { judge } from './judgement.ts';
import { keepings } from './keepers.ts';
import { readingsOf } from './measurements.ts';
import { type Mismatch, mismatchesOf } from './mismatch.ts';
import { observationsOf } from './observations.ts';
import type { Occupant, Seated } from './occupant.ts';
import { fittedAt, seatedAt } from './occupants.ts';
import { type OriginalPlace, originalPlaces } from './originals.ts';
import { opinionDays } from './origins.ts';
import { type Outcome, outcomeOf } from './outcome.ts';
import { type At, dateOf, perRecord, type RegisterSource } from './source.ts';
import { compareMoments, deedsOf, occupantsOf, seatedOf, staysOf } from './stays.ts';
import { Stepwise } from './stepwise.ts';
import { type Pending, pendingOf } from './to-do.ts';

export type { Occupant, OriginalPlace, Seated };

/** One line of the register: what was decided for a position, and what stands there. */
export interface RegisterRow {
  readonly position: PositionId;
  readonly subsystem: SubsystemId;
  /** How many it takes. */
  readonly count: number;
  /** Decisions in force, newest first; together they speak of at most `count`. */
  readonly inForce: readonly InForce[];
  /** Every decision up to the date, oldest first. */
  readonly decisions: readonly Decision[];
  /** Of how many nobody has decided (no decision, or `defer`), where something asks for it. */
  readonly undecided: number;
  /** Oldest first. */
  readonly fitted: readonly Occupant[];
  /** What stands there in a part that is off the vehicle, oldest first. */
  readonly seated: readonly Seated[];
  /** Places on the vehicle with nothing in them. */
  readonly empty: number;
  /** Where the position's originals are, on the vehicle or off it. */
  readonly originals: readonly OriginalPlace[];
  readonly mismatches: readonly Mismatch[];
  /** Decided and not yet carried out. */
  readonly pending: readonly Pending[];
  /** What stands there otherwise than it came off, with how. */
  readonly otherwise: readonly BackOtherwise[];
  readonly outcome: Outcome;
  /** When what stands at the position last changed. */
  readonly since: Moment;
}

/** The register at the end of a day: a row for each position, in catalogue order. */
export function registerAt(record: RegisterSource, at: At): readonly RegisterRow[] {
  return [...record.journal.positions.keys()].map((id) => rowAt(record, id, at));
}

/** The register's row of one position at the end of a day. */
export function registerRowAt(record: RegisterSource, position: PositionId, at: At): RegisterRow {
  return rowAt(record, position, at);
}

/** Rows by position, made when asked for. */
const rows = perRecord((record) => {
  const positions = [...record.journal.positions.values()];
  return new Map(positions.map((one) => [one.id, new Stepwise(datesOf(record, one), (date) => makeRow(record, one, date))]));
});

/** The days on which a row may change. */
function datesOf(record: RegisterSource, position: Position): readonly IsoDate[] {
  const stays = [
    occupantsOf(record, position.id),
    seatedOf(record, position.id),
    ...position.parts.map((part) => staysOf(record, part)),
  ].flat();
  return [
    ...stays.flatMap(({ from, to }) => (to ? [from.date, to.date] : [from.date])),
    ...position.parts.flatMap((part) => deedsOf(record, part).map(({ date }) => date)),
    ...stays.flatMap(({ part }) => opinionDays(record, part)),
    ...observationsOf(record, position.id).map(({ date }) => date),
    ...readingsOf(record, position.id).map(({ date }) => date),
    ...(record.history.decisions.get(position.id) ?? []).map(({ date }) => date),
    ...position.parts.flatMap((part) => asideOf(record, part).map(({ date }) => date)),
    // What stays behind when the vehicle passes on is not where it lies for whoever has it then.
    ...keepings(record).flatMap(({ by, from }) => (by === null ? [] : [from])),
  ];
}

function rowAt(record: RegisterSource, id: PositionId, at: At): RegisterRow {
  const row = rows(record).get(id)?.at(dateOf(record, at));
  if (!row) throw new RangeError(`no position ${id}`);
  return row;
}

function makeRow(record: RegisterSource, position: Position, date: IsoDate): RegisterRow {
  const all = record.history.decisions.get(position.id) ?? [];
  const inForce = decisionsInForce(all, position.count, date);
  const fitted = fittedAt(record, position, date);
  const seated = seatedAt(record, position, date);
  const judgement = judge(record, position, [...fitted, ...seated], inForce);
  const inQuestion = isInQuestion(record, position, inForce, date);
  const otherwise = backOtherwiseAt(record, position, [...fitted, ...seated], date);
  return {
    position: position.id,
    subsystem: position.subsystem,
    count: position.count,
    inForce,
    decisions: all.filter((decision) => decision.date <= date),
    undecided: inQuestion ? position.count - decidedCount(inForce) : 0,
    fitted,
    seated,
    empty: position.count - fitted.reduce((sum, { count }) => sum + count, 0),
    originals: originalPlaces(record, position, date),
    mismatches: mismatchesOf(record, position, judgement, date),
    pending: pendingOf(record, position, judgement, date),
    otherwise,
    outcome: outcomeOf(record, position, { fitted, seated, inForce, inQuestion, otherwise }, date),
    since: lastChange(record, position, date),
  };
}

function lastChange(record: RegisterSource, position: Position, date: IsoDate): Moment {
  const later = compareMoments(record);
  let last: Moment = { date: record.journal.settings.arrived, session: null };
  for (const { from, to } of occupantsOf(record, position.id)) {
    for (const moment of [from, to]) {
      if (moment && moment.date <= date && later(moment, last) > 0) last = moment;
    }
  }
  return last;
}
