import type { IsoDate, PartId, Position, Whereabouts } from '../model.ts';
import { isHere, originInWords } from '../replay/words.ts';
import type { BackOtherwise } from './back-otherwise.ts';
import { decidedCount, type InForce } from './decisions-in-force.ts';
import { goneInWords, goneOf } from './gone.ts';
import { stayedWith } from './keepers.ts';
import type { Occupant, Seated } from './occupant.ts';
import type { RegisterSource } from './source.ts';
import { occupantsOf, seatedOf, staysOf, whereaboutsAt } from './stays.ts';
import { isUntouched, type WorkKind, workDone } from './work-done.ts';

export type OutcomeKind =
  | 'kept-as-found'
  | 'kept-conserved'
  | 'kept-repaired'
  | 'kept-refinished'
  /** A firm had it to do something to, and nobody said of what kind. */
  | 'kept-worked-on'
  /** Nothing was done to it, and it went back otherwise than it came off. */
  | 'kept-otherwise'
  | 'replaced'
  | 'partly-replaced'
  /** The position came with a part that was not on the vehicle as found: something was added. */
  | 'added'
  | 'left-off'
  | 'missing'
  | 'off-for-now'
  /** What belongs there stands at other places of the vehicle. */
  | 'elsewhere'
  /** What belongs there is off, and stayed with a former keeper when the vehicle passed on. */
  | 'stayed-behind'
  /** Nothing of it is left here. */
  | 'gone'
  /** The part that has this position of its own is not here yet. */
  | 'not-yet'
  /** Nobody has decided and something asks for it. */
  | 'undecided'
  /** Nobody has decided, nobody has done anything to it, and nothing asks for it. */
  | 'untouched';

/** What became of a position, computed from what is fitted, what was done to it and what was decided. */
export interface Outcome {
  readonly kind: OutcomeKind;
  /** As the register prints it: `kept, repaired (2 of 5), 3 of 5 on`. */
  readonly words: string;
}

const KEPT: Readonly<Record<WorkKind, readonly [OutcomeKind, string]>> = {
  repaired: ['kept-repaired', 'kept, repaired'],
  refinished: ['kept-refinished', 'kept, refinished'],
  conserved: ['kept-conserved', 'kept, conserved'],
  'worked-on': ['kept-worked-on', 'kept, worked on'],
};

/** What an outcome is computed from, at the end of a day. */
export interface Standings {
  readonly fitted: readonly Occupant[];
  /** In its place in a part that is off the vehicle. */
  readonly seated: readonly Seated[];
  readonly inForce: readonly InForce[];
  /** It asks for a verdict. */
  readonly inQuestion: boolean;
  /** What of it went back otherwise than it came off. */
  readonly otherwise: readonly BackOtherwise[];
}

/** The outcome of a position at the end of a day. */
export function outcomeOf(record: RegisterSource, position: Position, standings: Standings, date: IsoDate): Outcome {
  const { inForce } = standings;
  const { fitted, seated } = whatCounts(standings);
  const standing = [...fitted, ...seated];
  const asFound = standing.filter((occupant) => occupant.asFound).reduce(sumCount, 0);
  const total = standing.reduce(sumCount, 0);
  if (total === 0) return nothingFitted(record, position, inForce, date);
  const here = seated.length > 0 ? 'in place' : 'on';
  const some = total < position.count ? `, ${total} of ${position.count} ${here}${lostToo(record, position, total, date)}` : '';
  const on = some + offWith(record, seated);
  if (asFound === total) return kept(record, position, standings, date, on);
  if (asFound > 0) {
    const words = `partly replaced (${total - asFound} of ${position.count})${on}`;
    return { kind: 'partly-replaced', words };
  }
  return standIn(record, position, standing, on);
}

/**
 * What a position is judged by: what stands there on the vehicle. Where nothing does, what stands there in the same
 * assembly as the part that was found there, else in any that is off.
 */
function whatCounts({ fitted, seated }: Standings): Pick<Standings, 'fitted' | 'seated'> {
  if (fitted.length > 0) return { fitted, seated: [] };
  const own = seated.find(({ asFound }) => asFound);
  return { fitted, seated: own ? seated.filter(({ carrier }) => carrier === own.carrier) : seated };
}

/** With what it is off the vehicle: `, off with Engine`. */
function offWith(record: RegisterSource, seated: readonly Seated[]): string {
  const names = [...new Set(seated.map(({ carrier }) => record.journal.parts.get(carrier)?.name ?? carrier))];
  return names.length === 0 ? '' : `, off with ${names.join(', ')}`;
}

/**
 * How many of the places that are empty are so because what belongs there is gone, or missing: `, 2 gone, 1 missing`; `of` says of how
 * many. Where others stand in for some, and nobody can tell for which, no more is said than is so in any case.
 */
function lostToo(record: RegisterSource, position: Position, on: number, date: IsoDate, of = ''): string {
  const own = whereaboutsAt(record, position.id, date);
  const countOf = (holds: (where: Whereabouts) => boolean): number => own.filter(({ where }) => holds(where)).reduce(sumCount, 0);
  const missing = countOf(({ at }) => at === 'missing');
  const gone = countOf(({ at }) => at === 'gone');
  const elsewhere = countOf((where) => !isLost(where) && !(where.at === 'fitted' && where.position === position.id));
  const lost = position.count - on - elsewhere;
  const sure = (count: number, other: number): number => Math.min(count, lost - other);
  return lostInWords(sure(gone, missing), 'gone', of) + lostInWords(sure(missing, gone), 'missing', of);
}

const isLost = ({ at }: Whereabouts): boolean => at === 'missing' || at === 'gone';

function lostInWords(count: number, how: string, of: string): string {
  return count > 0 ? `, ${count}${of} ${how}` : '';
}

function nothingFitted(record: RegisterSource, position: Position, inForce: readonly InForce[], date: IsoDate): Outcome {
  const omitted = inForce.reduce((sum, { decision, count }) => (decision.verdict === 'omit' ? sum + count : sum), 0);
  if (omitted === position.count) return { kind: 'left-off', words: 'left off' };
  const stood = [...occupantsOf(record, position.id), ...seatedOf(record, position.id)].filter(({ from }) => from.date <= date);
  const parts = [...new Set([position.id, ...stood.map(({ part }) => part)])];
  const places = parts
    .flatMap((part) => whereaboutsAt(record, part, date).map((one) => ({ ...one, part })))
    .filter(({ where }) => isHere(where));
  if (places.length === 0) return { kind: 'not-yet', words: 'not yet fitted' };
  // What stood in for what was never there, and is gone again, leaves the place as it was found.
  const own = places.filter(({ part }) => part === position.id);
  const isOver = places.every(({ where }) => isLost(where));
  if (isOver && own.length > 0 && own.every(({ where }) => where.at === 'missing')) return { kind: 'missing', words: 'missing' };
  const { how } = goneOf(record, position.id, date);
  const of = ` of ${position.count}`;
  if (isOver) {
    const missing = own.filter(({ where }) => where.at === 'missing').reduce(sumCount, 0);
    return { kind: 'gone', words: goneInWords(how) + lostInWords(missing, 'missing', of) };
  }
  const lost = position.count > 1 ? lostToo(record, position, 0, date, of) : '';
  const left = places.filter(({ where }) => !isLost(where));
  if (left.every(({ where }) => where.at === 'fitted')) return { kind: 'elsewhere', words: `fitted elsewhere${lost}` };
  const stayed = left.filter(({ part, where }) => stayedWith(record, part, where, date) !== null);
  if (stayed.length === left.length) return { kind: 'stayed-behind', words: `stayed behind${lost}` };
  const behind = stayed.filter(({ part }) => part === position.id).reduce(sumCount, 0);
  const state = stood.length > 0 ? 'off for now' : neverOn(record, position.id);
  return { kind: 'off-for-now', words: `${state}${lostInWords(behind, 'stayed behind', of)}${lost}` };
}

/** Of what lies here and never stood in its place as far as the record goes: nobody took it off. */
function neverOn(record: RegisterSource, part: PartId): string {
  const own = record.journal.parts.get(part);
  return own?.found === 'loose' && own.acquired === null ? 'found loose, not fitted since' : 'not yet fitted';
}

function kept(record: RegisterSource, position: Position, standings: Standings, date: IsoDate, on: string): Outcome {
  const { inForce, inQuestion, otherwise } = standings;
  const work = workDone(record, position.id, date);
  const back = backInWords(position, otherwise);
  if (work === null) {
    const undecided = decidedCount(inForce) === 0;
    if (undecided && inQuestion) return { kind: 'undecided', words: `undecided${back}${on}` };
    if (undecided && isUntouched(record, position.id, date)) return { kind: 'untouched', words: `untouched${on}` };
    if (back !== '') return { kind: 'kept-otherwise', words: `kept${back}${on}` };
    return { kind: 'kept-as-found', words: `kept as found${on}` };
  }
  const [kind, words] = KEPT[work.kind];
  const some = work.count < position.count ? ` (${work.count} of ${position.count})` : '';
  return { kind, words: words + some + (work.andMore ? ', other work too' : '') + back + on };
}

/** `, went back otherwise (2 of 5)`; '' where nobody said so of any. */
function backInWords({ id, count: places }: Position, otherwise: readonly BackOtherwise[]): string {
  const count = otherwise.filter(({ part }) => part === id).reduce(sumCount, 0);
  if (count === 0) return '';
  return `, went back otherwise${count < places ? ` (${count} of ${places})` : ''}`;
}

function standIn(record: RegisterSource, position: Position, fitted: readonly Occupant[], on: string): Outcome {
  const origins = new Set(fitted.map(({ origin }) => originInWords(origin)));
  const kind = wasHere(record, position.id) ? 'replaced' : 'added';
  return { kind, words: `${kind} (${[...origins].join(', ')})${on}` };
}

/** False for a part that came later and brought its own position: it replaces nothing. */
export function wasHere(record: RegisterSource, part: PartId): boolean {
  const first = staysOf(record, part)[0];
  return first !== undefined && isHere(first.where);
}

function sumCount(sum: number, { count }: Pick<Occupant, 'count'>): number {
  return sum + count;
}
