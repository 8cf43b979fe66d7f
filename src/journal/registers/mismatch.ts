import type { Decision, IsoDate, Part, PartId, Position, PositionId, Verdict } from '../model.ts';
import type { Moment } from '../record.ts';
import { originInWords } from '../replay/words.ts';
import type { InForce } from './decisions-in-force.ts';
import { goneInWords, goneOf } from './gone.ts';
import type { Judged, Laid } from './judgement.ts';
import type { RegisterSource } from './source.ts';
import { covers, staysOf, whereaboutsAt } from './stays.ts';
import { whereNowInWords } from './where-now.ts';

/** What is on the vehicle is ruled out by the decision in force, or what was to be kept is gone for good. */
export interface Mismatch {
  readonly position: PositionId;
  readonly decision: Decision;
  readonly kind: 'fitted' | 'gone';
  /** What stands there against the decision, or went against it; how many, and since when. */
  readonly part: PartId;
  readonly count: number;
  readonly since: Moment;
  /** `Decided: keep. But Brake drum, new pattern (reproduction) is fitted.` */
  readonly words: string;
  /** What would settle it, each a thing to do; any one is enough. */
  readonly settle: readonly string[];
}

/** The mismatches of one position, from what its occupants were judged to be; what went against a decision is told with what stands there instead. */
export function mismatchesOf(record: RegisterSource, position: Position, judgement: readonly Judged[], date: IsoDate): readonly Mismatch[] {
  return judgement.flatMap(({ inForce, laid }): readonly Mismatch[] => {
    const against = laid.filter(({ standing }) => standing === 'against');
    const gone = goneAgainst(record, inForce, date);
    if (gone > 0) return [goneMismatch(record, position, inForce.decision, gone, against, date)];
    return against.map((one) => fittedMismatch(record, position, inForce.decision, one, date));
  });
}

function fittedMismatch(record: RegisterSource, position: Position, decision: Decision, laid: Laid, date: IsoDate): Mismatch {
  const { part, since } = laid.occupant;
  const meant = decision.with === null ? decision.verdict : `${decision.verdict} with ${nameOf(record, decision.with)}`;
  const words = `Decided: ${meant}. But ${fittedWords(record, position, laid)}.`;
  const settle = settlements(record, position, decision, part, date);
  return { position: position.id, decision, kind: 'fitted', part, count: laid.count, since, words, settle };
}

function goneMismatch(
  record: RegisterSource,
  position: Position,
  decision: Decision,
  count: number,
  against: readonly Laid[],
  date: IsoDate,
): Mismatch {
  const { part, verdict } = decision;
  const facts = [goneWords(record, position, part, count, date), ...against.map((laid) => fittedWords(record, position, laid))];
  const words = `Decided: ${verdict}. But ${facts.join(', and ')}.`;
  const since = goneSince(record, part, date);
  return { position: position.id, decision, kind: 'gone', part, count, since, words, settle: [`Record ${DECIDE_ANEW}`] };
}

function fittedWords(record: RegisterSource, position: Position, { occupant: { part, origin }, count }: Laid): string {
  return `${countedName(record, position, part, count)} (${originInWords(origin)}) ${count > 1 ? 'are' : 'is'} fitted`;
}

const KEEPING: readonly Verdict[] = ['keep', 'conserve', 'repair', 'refinish'];

/** How many of those that a decision keeps are gone for good, so that fewer are left than it speaks of. */
export function goneAgainst(record: RegisterSource, inForce: InForce, date: IsoDate): number {
  return tooFewBy(record, inForce, goneOf(record, inForce.decision.part, date).count);
}

/** How many of those that a decision keeps cannot be worked on or put back: gone for good, or missing as found. */
export function lackingFor(record: RegisterSource, inForce: InForce, date: IsoDate): number {
  const missing = whereaboutsAt(record, inForce.decision.part, date).filter(({ where }) => where.at === 'missing');
  const lost = missing.reduce((sum, { count }) => sum + count, goneOf(record, inForce.decision.part, date).count);
  return tooFewBy(record, inForce, lost);
}

/** By how many a decision to keep speaks of more than are left when so many are lost. */
function tooFewBy(record: RegisterSource, { decision, count }: InForce, lost: number): number {
  const part = record.journal.parts.get(decision.part);
  if (!part || !KEEPING.includes(decision.verdict)) return 0;
  return Math.min(lost, Math.max(0, count - (part.count - lost)));
}

function goneWords(record: RegisterSource, position: Position, part: PartId, count: number, date: IsoDate): string {
  const { how } = goneOf(record, part, date);
  return `${countedName(record, position, part, count)} ${count > 1 ? 'are' : 'is'} ${goneInWords(how)}`;
}

/** When the last of them went. */
function goneSince(record: RegisterSource, part: PartId, date: IsoDate): Moment {
  const gone = staysOf(record, part).filter((stay) => stay.where.at === 'gone' && covers(stay, date));
  const { arrived } = record.journal.settings;
  return gone.at(-1)?.from ?? { date: arrived, session: null };
}

function countedName(record: RegisterSource, position: Position, part: PartId, count: number): string {
  return position.count > 1 ? `${count} of ${nameOf(record, part)}` : nameOf(record, part);
}

const DECIDE_ANEW = 'a decision that says what is meant now, and why.';

function settlements(record: RegisterSource, position: Position, decision: Decision, standing: PartId, date: IsoDate): readonly string[] {
  const decideAnew = `Or record ${DECIDE_ANEW}`;
  if (decision.verdict === 'omit') return [`Take ${nameOf(record, standing)} off.`, decideAnew];
  const wanted = decision.verdict === 'replace' ? decision.with : decision.part;
  const part = wanted === null ? undefined : record.journal.parts.get(wanted);
  if (!part) return [decideAnew];
  return [bringing(record, part, position, date), decideAnew];
}

/** How the part that was decided on gets to its position. Only where a part of this position lies is told, or who kept it. */
function bringing(record: RegisterSource, part: Part, position: Position, date: IsoDate): string {
  const places = part.position === position.id ? whereaboutsAt(record, part.id, date) : [];
  const where = places.filter((place) => place.where.at !== 'fitted').map((place) => whereNowInWords(record, part.id, place.where, date));
  return where.length === 0 ? `Fit ${part.name}.` : `Fit ${part.name}: it is ${[...new Set(where)].join('; ')}.`;
}

function nameOf(record: RegisterSource, part: PartId): string {
  return record.journal.parts.get(part)?.name ?? part;
}
