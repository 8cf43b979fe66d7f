import type { Moment, Stay } from '../record.ts';

/** A number that held from one moment to the next; null: still does. */
export interface Step {
  readonly count: number;
  readonly from: Moment;
  readonly to: Moment | null;
}

/** A time without a break in which there was at least one, and how many there were in turn. */
export interface Spell {
  readonly from: Moment;
  readonly to: Moment | null;
  readonly steps: readonly Step[];
}

interface Change {
  readonly at: Moment;
  readonly by: number;
}

/**
 * The times in which some of the stays held, as unbroken spells, oldest first. What ends and begins
 * again at the same moment is no break: a part that came off and went back in one session never left.
 *
 * @param order compares moments of the record
 */
export function spellsOf(stays: readonly Stay[], order: (a: Moment, b: Moment) => number): readonly Spell[] {
  const changes: Change[] = stays.flatMap(({ from, to, count }) => [{ at: from, by: count }, ...(to ? [{ at: to, by: -count }] : [])]);
  return stepsOf(0, changes, order).reduce<Spell[]>(joined, []);
}

/**
 * A running number as steps of equal value, from its first change on.
 *
 * @param start what it is before the first change
 */
export function stepsOf(start: number, changes: readonly Change[], order: (a: Moment, b: Moment) => number): readonly Step[] {
  const inOrder = [...changes].sort((a, b) => order(a.at, b.at));
  const marks: { at: Moment; count: number }[] = [];
  let count = start;
  for (const change of inOrder) {
    count += change.by;
    const last = marks.at(-1);
    if (last && order(last.at, change.at) === 0) last.count = count;
    else marks.push({ at: change.at, count });
  }
  const kept = marks.filter((mark, index) => index === 0 || mark.count !== marks[index - 1]?.count);
  return kept.map((mark, index) => ({ count: mark.count, from: mark.at, to: kept[index + 1]?.at ?? null }));
}

/** Adds a step to the spells: to the last one where it follows on, else as a new one; a step of none parts them. */
function joined(spells: Spell[], step: Step): Spell[] {
  if (step.count === 0) return spells;
  const last = spells.at(-1);
  if (last && last.to === step.from) spells.splice(-1, 1, { from: last.from, to: step.to, steps: [...last.steps, step] });
  else spells.push({ from: step.from, to: step.to, steps: [step] });
  return spells;
}
