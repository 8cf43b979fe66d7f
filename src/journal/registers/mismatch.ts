import type { Decision, IsoDate, Part, PartId, Position, PositionId } from '../model.ts';
import type { Moment } from '../record.ts';
import { originInWords, whereInWords } from '../replay/words.ts';
import type { Judged } from './judgement.ts';
import type { RegisterSource } from './source.ts';
import { type Whereat, whereaboutsAt } from './stays.ts';

/** What is on the vehicle is ruled out by the decision in force. */
export interface Mismatch {
  readonly position: PositionId;
  readonly decision: Decision;
  /** What stands there against the decision, how many, and since when. */
  readonly part: PartId;
  readonly count: number;
  readonly since: Moment;
  /** `Decided: keep. But Brake drum, new pattern (reproduction) is fitted.` */
  readonly words: string;
  /** What would settle it, each a thing to do; any one is enough. */
  readonly settle: readonly string[];
}

/** The mismatches of one position, from what its occupants were judged to be. */
export function mismatchesOf(record: RegisterSource, position: Position, judgement: readonly Judged[], date: IsoDate): readonly Mismatch[] {
  return judgement.flatMap(({ inForce: { decision }, laid }) =>
    laid
      .filter(({ standing }) => standing === 'against')
      .map(({ occupant: { part, since }, count }) => ({
        position: position.id,
        decision,
        part,
        count,
        since,
        words: wordsOf(record, position, decision, part, count),
        settle: settlements(record, position, decision, part, date),
      })),
  );
}

function wordsOf(record: RegisterSource, position: Position, decision: Decision, part: PartId, count: number): string {
  const meant = decision.with === null ? decision.verdict : `${decision.verdict} with ${nameOf(record, decision.with)}`;
  const fitted = record.journal.parts.get(part);
  const many = position.count > 1 ? `${count} of ${nameOf(record, part)}` : nameOf(record, part);
  return `Decided: ${meant}. But ${many} (${originInWords(fitted?.origin ?? null)}) ${count > 1 ? 'are' : 'is'} fitted.`;
}

function settlements(record: RegisterSource, position: Position, decision: Decision, standing: PartId, date: IsoDate): readonly string[] {
  const decideAnew = 'Or record a decision that says what is meant now, and why.';
  if (decision.verdict === 'omit') return [`Take ${nameOf(record, standing)} off.`, decideAnew];
  const wanted = decision.verdict === 'replace' ? decision.with : decision.part;
  const part = wanted === null ? undefined : record.journal.parts.get(wanted);
  if (!part) return [decideAnew];
  return [bringing(part, position, whereaboutsAt(record, part.id, date)), decideAnew];
}

/** How the part that was decided on gets to its position. Only where a part of this position lies is told. */
function bringing(part: Part, position: Position, places: readonly Whereat[]): string {
  const off = part.position === position.id ? places.filter(({ where }) => where.at !== 'fitted') : [];
  const where = off.map((place) => whereInWords(place.where)).join('; ');
  return where === '' ? `Fit ${part.name}.` : `Fit ${part.name}: it is ${where}.`;
}

function nameOf(record: RegisterSource, part: PartId): string {
  return record.journal.parts.get(part)?.name ?? part;
}
