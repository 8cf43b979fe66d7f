import type { Decision } from '../model.ts';
import { decisionsInForce } from '../registers/decisions-in-force.ts';

/** So many that a decision lost to a later one. */
export interface Superseded {
  readonly decision: Decision;
  readonly count: number;
}

/** A decision with what it overturned, what overturned it, and for how many it still holds. */
export interface DecisionInTime {
  readonly decision: Decision;
  readonly superseded: readonly Superseded[];
  readonly supersededBy: readonly Superseded[];
  readonly inForce: number;
}

/**
 * Every decision on a position with its place in the sequence, oldest first.
 *
 * @param decisions oldest first
 * @param places how many the position takes
 */
export function decisionHistory(decisions: readonly Decision[], places: number): readonly DecisionInTime[] {
  const history = decisions.map((decision) => ({
    decision,
    superseded: [] as Superseded[],
    supersededBy: [] as Superseded[],
    inForce: 0,
  }));
  const byId = new Map(history.map((one) => [one.decision.id, one]));
  let before: readonly Superseded[] = [];
  for (const [n, one] of history.entries()) {
    const after = decisionsInForce(decisions.slice(0, n + 1), places, one.decision.date);
    for (const { decision, count } of before) {
      const lost = count - (after.find((other) => other.decision === decision)?.count ?? 0);
      if (lost <= 0) continue;
      one.superseded.push({ decision, count: lost });
      byId.get(decision.id)?.supersededBy.push({ decision: one.decision, count: lost });
    }
    before = after;
  }
  for (const { decision, count } of before) {
    const one = byId.get(decision.id);
    if (one) one.inForce = count;
  }
  return history;
}
