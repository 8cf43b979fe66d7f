import type { Decision, Origin, PartId, Position, PositionId } from '../model.ts';
import type { JournalRecord, Moment } from '../record.ts';
import { type MeasurementSeries, seriesOf } from '../registers/measurements.ts';
import { originAt } from '../registers/origins.ts';
import { wasHere } from '../registers/outcome.ts';
import { type RegisterRow, registerRowAt } from '../registers/register.ts';
import { groupedBy } from '../registers/source.ts';
import { compareMoments, occupantsOf, seatedOf, type Whereat, whereaboutsAt } from '../registers/stays.ts';
import { type DecisionInTime, decisionHistory } from './decision-history.ts';
import type { TimelineEvent } from './event.ts';
import { eventsOfPosition } from './events.ts';
import { type Spell, type Step, spellsOf, stepsOf } from './spells.ts';

/** A part standing at the position without a break. Its `steps` say how many of a lot stood there in turn. */
export interface Occupancy extends Spell {
  readonly part: PartId;
  readonly origin: Origin | null;
  /** The part that made the position; anything else is a stand-in or a replacement. */
  readonly asFound: boolean;
}

/** A part that belongs to the position and never stood anywhere on the vehicle's place for it. */
export interface UnusedCandidate {
  readonly part: PartId;
  /** Decisions that named it as what to replace with. */
  readonly considered: readonly Decision[];
  /** Where it is now. */
  readonly places: readonly Whereat[];
}

/** A position's whole life. */
export interface PositionTimeline {
  readonly position: Position;
  /** The present state: the register's row on the record's day. */
  readonly now: RegisterRow;
  /** Who stood there from when to when, by beginning. */
  readonly occupancies: readonly Occupancy[];
  /** When places were empty, and how many (`count`), oldest first. */
  readonly gaps: readonly Step[];
  readonly decisions: readonly DecisionInTime[];
  readonly unused: readonly UnusedCandidate[];
  readonly measurements: readonly MeasurementSeries[];
  /** Everything that happened, oldest first. */
  readonly events: readonly TimelineEvent[];
}

/**
 * The life of one position. Indexes are built once a record, so all positions together cost one pass.
 *
 * @throws RangeError when the record has no such position
 */
export function positionTimeline(record: JournalRecord, id: PositionId): PositionTimeline {
  const position = record.journal.positions.get(id);
  if (!position) throw new RangeError(`no position ${id}`);
  const occupancies = occupanciesOf(record, position);
  const decisions = decisionHistory(record.history.decisions.get(id) ?? [], position.count);
  return {
    position,
    now: registerRowAt(record, id, null),
    occupancies,
    gaps: gapsOf(record, position),
    decisions,
    unused: unusedOf(record, position, decisions),
    measurements: position.parts.flatMap((part) => seriesOf(record, part)),
    events: eventsOfPosition(record, id),
  };
}

function occupanciesOf(record: JournalRecord, position: Position): readonly Occupancy[] {
  const order = compareMoments(record);
  const byPart = groupedBy(occupantsOf(record, position.id), ({ part }) => part);
  const occupancies = [...byPart].flatMap(([part, stays]) =>
    spellsOf(stays, order).map((spell) => ({
      part,
      origin: originAt(record, part, record.day),
      asFound: part === position.id && wasHere(record, part),
      ...spell,
    })),
  );
  return occupancies.sort((a, b) => order(a.from, b.from));
}

function gapsOf(record: JournalRecord, position: Position): readonly Step[] {
  const start: Moment = { date: record.journal.settings.arrived, session: null };
  const changes = occupantsOf(record, position.id).flatMap(({ from, to, count }) => [
    { at: from, by: -count },
    ...(to ? [{ at: to, by: count }] : []),
  ]);
  const steps = stepsOf(position.count, [{ at: start, by: 0 }, ...changes], compareMoments(record));
  return steps.filter(({ count }) => count > 0);
}

function unusedOf(record: JournalRecord, position: Position, decisions: readonly DecisionInTime[]): readonly UnusedCandidate[] {
  const stood = new Set([...occupantsOf(record, position.id), ...seatedOf(record, position.id)].map(({ part }) => part));
  return position.parts
    .filter((part) => part !== position.id && !stood.has(part))
    .map((part) => ({
      part,
      considered: decisions.map(({ decision }) => decision).filter((decision) => decision.with === part),
      places: whereaboutsAt(record, part, record.day),
    }));
}
