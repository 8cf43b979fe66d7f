import type { Decision, PartId, Position } from '../model.ts';
import type { Moment } from '../record.ts';
import type { InForce } from './decisions-in-force.ts';
import type { Occupant } from './occupant.ts';
import type { RegisterSource } from './source.ts';
import { compareMoments, occupantsOf, seatedOf } from './stays.ts';

/** How what is fitted stands to a decision: as decided, not yet changed, or ruled out by it. */
export type Standing = 'as-decided' | 'not-yet' | 'against';

/** So many of an occupant, laid to the decision that speaks of them. */
export interface Laid {
  readonly occupant: Occupant;
  readonly count: number;
  readonly standing: Standing;
}

/** A decision in force and what of the position's occupants it is answered by; together they fill at most its count. */
export interface Judged {
  readonly inForce: InForce;
  readonly laid: readonly Laid[];
}

const STANDINGS: readonly Standing[] = ['as-decided', 'not-yet', 'against'];

/**
 * Lays every occupant of a position to one of the decisions in force, so that as many as can be
 * agree with theirs. What no decision speaks of is undecided and never against anything.
 */
export function judge(
  record: RegisterSource,
  position: Position,
  fitted: readonly Occupant[],
  inForce: readonly InForce[],
): readonly Judged[] {
  const slices = inForce.map((one) => ({ inForce: one, left: one.count, laid: [] as Laid[] }));
  const decided = inForce.reduce((sum, one) => sum + one.count, 0);
  const free = { inForce: null, left: position.count - decided, laid: [] as Laid[] };
  const units = fitted.map((occupant) => ({ occupant, left: occupant.count }));
  const inTurn = [...slices].sort((a, b) => openness(a.inForce.decision) - openness(b.inForce.decision));
  for (const level of STANDINGS) {
    for (const slice of level === 'against' ? inTurn : [...inTurn, free]) {
      for (const unit of units) {
        const standing = slice.inForce ? standingOf(record, position, slice.inForce.decision, unit.occupant) : 'as-decided';
        const count = Math.min(slice.left, unit.left);
        if (count === 0 || standing !== level) continue;
        slice.laid.push({ occupant: unit.occupant, count, standing });
        slice.left -= count;
        unit.left -= count;
      }
    }
  }
  return slices.map(({ inForce: one, laid }) => ({ inForce: one, laid }));
}

/** Decisions that name a part are answered first, then those that take any, then those that ask for nothing. */
function openness(decision: Decision): number {
  if (decision.verdict === 'defer') return 2;
  return decision.verdict === 'replace' && decision.with === null ? 1 : 0;
}

function standingOf(record: RegisterSource, position: Position, decision: Decision, occupant: Occupant): Standing {
  switch (decision.verdict) {
    case 'defer':
      return 'as-decided';
    case 'replace':
      return replaced(record, position, decision, occupant);
    case 'omit':
      return fittedAfter(record, decision, occupant.since) ? 'against' : 'not-yet';
    default:
      return occupant.part === decision.part ? 'as-decided' : occupant.part === position.id ? 'not-yet' : 'against';
  }
}

function replaced(record: RegisterSource, position: Position, decision: Decision, occupant: Occupant): Standing {
  const { part } = occupant;
  if (part === decision.with) return 'as-decided';
  if (part === position.id || part === decision.part || stoodThere(record, position, decision, part)) return 'not-yet';
  return decision.with === null ? 'as-decided' : 'against';
}

/** True when the part was at the position before the session that decided: it is what the decision is about. */
function stoodThere(record: RegisterSource, position: Position, decision: Decision, part: PartId): boolean {
  const order = compareMoments(record);
  return [...occupantsOf(record, position.id), ...seatedOf(record, position.id)].some(
    (stay) => stay.part === part && order(stay.from, decision) < 0 && (stay.to === null || order(stay.to, decision) >= 0),
  );
}

function fittedAfter(record: RegisterSource, decision: Decision, since: Moment): boolean {
  return compareMoments(record)(since, decision) > 0;
}
