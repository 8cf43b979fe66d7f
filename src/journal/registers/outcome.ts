import type { ActionWord, IsoDate, Origin, Part, PartId, Position } from '../model.ts';
import { isHere, originInWords } from '../replay/words.ts';
import { decidedCount, type InForce } from './decisions-in-force.ts';
import type { Occupant } from './occupant.ts';
import { perRecord, type RegisterSource } from './source.ts';
import { deedsByPart, staysOf, whereaboutsAt } from './stays.ts';

export type OutcomeKind =
  | 'kept-as-found'
  | 'kept-conserved'
  | 'kept-repaired'
  | 'kept-refinished'
  | 'replaced'
  | 'partly-replaced'
  /** The position came with a part that was not on the vehicle as found: something was added. */
  | 'added'
  | 'left-off'
  | 'missing'
  | 'off-for-now'
  | 'undecided';

/** What became of a position, computed from what is fitted, what was done to it and what was decided. */
export interface Outcome {
  readonly kind: OutcomeKind;
  /** As the register prints it: `kept, repaired, 3 of 5 on`. */
  readonly words: string;
}

const RANK: Partial<Record<ActionWord, number>> = { conserved: 1, refinished: 2, repaired: 3, machined: 3 };
const KEPT: readonly (readonly [OutcomeKind, string])[] = [
  ['kept-as-found', 'kept as found'],
  ['kept-conserved', 'kept, conserved'],
  ['kept-refinished', 'kept, refinished'],
  ['kept-repaired', 'kept, repaired'],
];

/** By part: the dates at which its most invasive deed became more invasive. */
const invasiveDeeds = perRecord((record) => {
  const found = new Map<PartId, { date: IsoDate; rank: number }[]>();
  for (const [part, deeds] of deedsByPart(record)) {
    const steps: { date: IsoDate; rank: number }[] = [];
    for (const deed of deeds) {
      const rank = RANK[deed.did] ?? 0;
      if (rank > (steps.at(-1)?.rank ?? 0)) steps.push({ date: deed.date, rank });
    }
    found.set(part, steps);
  }
  return found;
});

/** The outcome of a position at the end of a day. */
export function outcomeOf(
  record: RegisterSource,
  position: Position,
  fitted: readonly Occupant[],
  inForce: readonly InForce[],
  date: IsoDate,
): Outcome {
  const asFound = fitted.filter((occupant) => occupant.asFound).reduce(sumCount, 0);
  const total = fitted.reduce(sumCount, 0);
  if (total === 0) return nothingFitted(record, position, inForce, date);
  const on = total < position.count ? `, ${total} of ${position.count} on` : '';
  if (asFound === total) return kept(record, position.id, inForce, date, on);
  if (asFound > 0) {
    const words = `partly replaced (${total - asFound} of ${position.count})${on}`;
    return { kind: 'partly-replaced', words };
  }
  return standIn(record, position, fitted, on);
}

function nothingFitted(record: RegisterSource, position: Position, inForce: readonly InForce[], date: IsoDate): Outcome {
  const omitted = inForce.reduce((sum, { decision, count }) => (decision.verdict === 'omit' ? sum + count : sum), 0);
  if (omitted === position.count) return { kind: 'left-off', words: 'left off' };
  const places = whereaboutsAt(record, position.id, date);
  if (places.length > 0 && places.every(({ where }) => where.at === 'missing')) return { kind: 'missing', words: 'missing' };
  return { kind: 'off-for-now', words: 'off for now' };
}

function kept(record: RegisterSource, part: PartId, inForce: readonly InForce[], date: IsoDate, on: string): Outcome {
  const rank =
    invasiveDeeds(record)
      .get(part)
      ?.findLast((step) => step.date <= date)?.rank ?? 0;
  if (rank === 0 && decidedCount(inForce) === 0) return { kind: 'undecided', words: `undecided${on}` };
  const [kind, words] = KEPT[rank] as readonly [OutcomeKind, string];
  return { kind, words: words + on };
}

function standIn(record: RegisterSource, position: Position, fitted: readonly Occupant[], on: string): Outcome {
  const origins = new Set(fitted.map(({ part }) => originInWords(originOf(record.journal.parts.get(part)))));
  const kind = wasHere(record, position.id) ? 'replaced' : 'added';
  return { kind, words: `${kind} (${[...origins].join(', ')})${on}` };
}

/** False for a part that came later and brought its own position: it replaces nothing. */
export function wasHere(record: RegisterSource, part: PartId): boolean {
  const first = staysOf(record, part)[0];
  return first !== undefined && isHere(first.where);
}

function originOf(part: Part | undefined): Origin | null {
  return part?.origin ?? null;
}

function sumCount(sum: number, occupant: Occupant): number {
  return sum + occupant.count;
}
