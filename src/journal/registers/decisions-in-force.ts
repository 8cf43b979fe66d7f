import type { Decision, IsoDate } from '../model.ts';

/** A decision and for how many of the position's lot it still holds. */
export interface InForce {
  readonly decision: Decision;
  readonly count: number;
  /** Which of a numbered lot; null where the decision does not say. */
  readonly which: readonly number[] | null;
}

/**
 * The decisions in force on a position at the end of a day, newest first. A later decision takes its count from the
 * earlier ones, so together they never speak of more than the position takes; one that says the same of another number
 * of the lot stands for the earlier one. Decisions that say which of a
 * numbered lot, and those on the whole of it, lose only those that a later one names.
 *
 * @param decisions all decisions on the position, oldest first
 * @param places how many the position takes
 */
export function decisionsInForce(decisions: readonly Decision[], places: number, date: IsoDate): readonly InForce[] {
  const inForce: InForce[] = [];
  let left = places;
  for (let index = decisions.length - 1; index >= 0 && left > 0; index -= 1) {
    const decision = decisions[index];
    if (!decision || decision.date > date) continue;
    const said = whichSaid(decision, inForce, places);
    if (inForce.some((later) => saysTheSame(later.decision, { ...decision, which: said }))) continue;
    const which = said?.filter((number) => !inForce.some((later) => later.which?.includes(number))) ?? null;
    const count = Math.min(which?.length ?? decision.count, left);
    if (count === 0) continue;
    inForce.push({ decision, count, which });
    left -= count;
  }
  return inForce;
}

/** Which of a numbered lot a decision is on; one on the whole of it is on each, once a later one names some. */
function whichSaid({ part, which, count }: Decision, later: readonly InForce[], places: number): readonly number[] | null {
  const named = later.some(({ decision }) => decision.which !== null && decision.part === part);
  if (which !== null || !named || count < places) return which;
  return Array.from({ length: places }, (_, n) => n + 1);
}

function saysTheSame(later: Decision, earlier: Decision): boolean {
  if (later.which !== null && earlier.which !== null) return false;
  return (
    later.session !== earlier.session && later.part === earlier.part && later.verdict === earlier.verdict && later.with === earlier.with
  );
}

/** How many of the position's lot have a verdict other than `defer`. */
export function decidedCount(inForce: readonly InForce[]): number {
  return inForce.reduce((sum, { decision, count }) => (decision.verdict === 'defer' ? sum : sum + count), 0);
}
