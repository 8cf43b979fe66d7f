/** What became of each position, told once more from the rules of the format alone. */
import type { ActionWord, Decision, Journal, PartId, Position, PositionId, Session } from '../../src/journal/model.ts';
import type { OutcomeKind } from '../../src/journal/registers/outcome.ts';
import type { Piece, Spot, Workshop } from './workshop.ts';

/** What work makes of what was kept, decided or not; the one that takes most from it comes first. */
const KEPT_BY: readonly (readonly [OutcomeKind, readonly ActionWord[]])[] = [
  ['kept-repaired', ['repaired', 'machined']],
  ['kept-refinished', ['refinished']],
  ['kept-conserved', ['conserved']],
];
/** What was only looked at is untouched. */
const LOOKED_AT: readonly ActionWord[] = ['inspected', 'measured'];

interface InForce {
  readonly decision: Decision;
  /** For how many of the places it speaks. */
  readonly count: number;
}

export class Outcomes {
  readonly #decisions = new Map<PositionId, Decision[]>();
  /** Spares that were decided on, and whether they are not wanted. */
  readonly #ruledOut = new Map<PartId, boolean>();
  /** Whether it was outside its limits when each thing of it was last measured. */
  readonly #outside = new Map<string, boolean>();
  readonly #journal: Journal;

  constructor(journal: Journal) {
    this.#journal = journal;
  }

  evening({ decisions, measured }: Session, shop: Workshop): void {
    for (const one of decisions) {
      if (!isOfThePlace(one, shop)) this.#ruledOut.set(one.part, one.verdict === 'omit');
      else this.#decisions.set(one.position, [...(this.#decisions.get(one.position) ?? []), one]);
    }
    for (const { part, what, within } of measured) if (within !== null) this.#outside.set(`${part} ${what}`, !within);
  }

  /**
   * The decisions in force, newest first: a later one supersedes, and speaks of so many of the places as it says. On
   * part of a lot a later note's with the same verdict and the same part replaces the earlier.
   */
  inForce({ id, count }: Position): readonly InForce[] {
    const told: { decision: Decision; count: number }[] = [];
    let left = count;
    for (const decision of (this.#decisions.get(id) ?? []).toReversed()) {
      const again = told.some(({ decision: later }) => replaces(later, decision));
      const many = Math.min(left, decision.count);
      if (again || many === 0) continue;
      told.push({ decision, count: many });
      left -= many;
    }
    return told;
  }

  kindOf(position: Position, shop: Workshop): OutcomeKind {
    const standing = standingOf(position, shop);
    const decided = this.inForce(position).filter(({ decision }) => decision.verdict !== 'defer');
    const own = shop.of(position.id);
    const strange = standing.filter(({ part }) => part.id !== position.id);
    if (standing.length === 0) return this.#nothingThere(position, decided, shop);
    if (strange.length > 0) return strange.length < standing.length ? 'partly-replaced' : 'replaced';
    if (isAdded(own, this.#journal)) return 'added';
    const ours = own.filter((piece) => standing.includes(piece) || isLying(shop.endOf(piece)?.at));
    const did = shop.done.filter(({ pieces }) => pieces.some((piece) => ours.includes(piece))).flatMap(({ entry }) => entry.did);
    const byFirms = ours.flatMap((piece) => this.#doneByFirms(piece, shop));
    const kept = KEPT_BY.find(([kind, words]) => byFirms.includes(kind) || words.some((word) => did.includes(word)))?.[0];
    if (kept !== undefined) return kept;
    if (byFirms.length > 0) return 'kept-worked-on';
    if (decided.length === 0 && this.#asks(position, shop)) return 'undecided';
    if (standing.some((piece) => isOtherwise(piece, shop))) return 'kept-otherwise';
    return decided.length > 0 || did.some((word) => !LOOKED_AT.includes(word)) ? 'kept-as-found' : 'untouched';
  }

  /** What came back from work at a firm, and no word of the note says of what kind: as the decision of that day meant it. */
  #doneByFirms(piece: Piece, { done }: Workshop): OutcomeKind[] {
    const entries = done.filter(({ pieces }) => pieces.includes(piece));
    return entries.flatMap(({ entry, when }, n) => {
      const sent = entries.slice(0, n).findLast((one) => one.entry.did.includes('sent-out'))?.entry;
      if (!entry.did.includes('returned') || KEPT_BY.some(([, words]) => words.some((word) => entry.did.includes(word)))) return [];
      if (!sent?.work || sent.how === 'loan') return [];
      const decisions = this.#decisions.get(piece.part.position) ?? [];
      const meant = decisions.findLast((one) => one.part === entry.part && one.date <= when.date)?.verdict;
      return [meant === 'repair' ? 'kept-repaired' : meant === 'conserve' ? 'kept-conserved' : 'kept-worked-on'];
    });
  }

  /** Off for now is what stood there and is here still. */
  #nothingThere({ id, count }: Position, decided: readonly InForce[], shop: Workshop): OutcomeKind {
    const omitted = decided.filter(({ decision }) => decision.verdict === 'omit').reduce((sum, one) => sum + one.count, 0);
    if (omitted === count) return 'left-off';
    const others = shop.done.filter(({ entry }) => entry.did.includes('fitted')).flatMap(({ pieces }) => pieces);
    const stood = [...others, ...shop.cameWithin].filter(({ part }) => part.id !== id && part.position === id);
    if (stood.some((piece) => isLying(shop.endOf(piece)?.at))) return 'off-for-now';
    if (stood.length > 0 && !shop.of(id).some((piece) => isLying(shop.endOf(piece)?.at))) return 'gone';
    const ends = shop.of(id).map((piece) => shop.endOf(piece)?.at);
    if (ends.every((end) => end === 'not-yet' || end === 'considered')) return 'not-yet';
    if (ends.every((end) => end === 'missing')) return 'missing';
    const left = shop.of(id).filter((piece) => !['gone', 'missing'].includes(shop.endOf(piece)?.at ?? ''));
    if (left.length === 0) return 'gone';
    return left.every((piece) => shop.endOf(piece) === null) ? 'elsewhere' : 'off-for-now';
  }

  /** Of how many nobody has decided, where something asks for it. */
  undecided(position: Position, shop: Workshop): number {
    const decided = this.inForce(position).filter(({ decision }) => decision.verdict !== 'defer');
    const open = position.count - decided.reduce((sum, { count }) => sum + count, 0);
    return this.#asks(position, shop) ? open : 0;
  }

  /** Taken off, failed, put off, or with a candidate: it asks for a verdict. */
  #asks(position: Position, shop: Workshop): boolean {
    const own = shop.of(position.id);
    const touched = shop.done.filter(({ entry }) => position.parts.includes(entry.part));
    const cameOff = own.some(({ spot }) => isLying(spot.at)) || touched.some(({ entry }) => entry.did.includes('removed'));
    const failed = this.#failed(position.id) || touched.some(({ entry }) => entry.condition === 3);
    const candidate = position.parts
      .filter((id) => id !== position.id && this.#ruledOut.get(id) !== true)
      .some((id) => shop.of(id).some((piece) => !['not-yet', 'gone'].includes(shop.endOf(piece)?.at ?? '')));
    const putOff = this.inForce(position).some(({ decision }) => decision.verdict === 'defer');
    return cameOff || failed || candidate || putOff;
  }

  #failed(part: PartId): boolean {
    return [...this.#outside].some(([key, outside]) => outside && key.startsWith(`${part} `));
  }
}

/** What is said of a spare that never stood there says nothing of the place, but for what is to stand there instead. */
function isOfThePlace({ part, position, verdict }: Decision, shop: Workshop): boolean {
  const stood =
    shop.of(part).some(({ spot }) => spot.at === 'seat') ||
    shop.done.some(({ entry }) => entry.part === part && entry.did.includes('fitted'));
  return part === position || verdict === 'replace' || stood;
}

/** What counts: what is on the vehicle; where nothing is, what stands beside the part that was found there, else anywhere. */
function standingOf({ id }: Position, shop: Workshop): readonly Piece[] {
  const all = shop.at(id);
  const on = all.filter((piece) => shop.endOf(piece) === null);
  if (on.length > 0) return on;
  const carrierOf = ({ spot }: Piece) => (spot.at === 'seat' ? spot.carrier : null);
  const own = all.find(({ part }) => part.id === id);
  return own === undefined ? all : all.filter((piece) => carrierOf(piece) === carrierOf(own));
}

/** The last that a note said of how it went back is that it is not as it came off. */
function isOtherwise(piece: Piece, { done }: Workshop): boolean {
  const back = done.filter(({ entry, pieces }) => pieces.includes(piece) && entry.did.includes('fitted') && entry.asWas !== null);
  return back.at(-1)?.entry.asWas === false;
}

function isLying(at: Spot['at'] | undefined): boolean {
  return at === 'stores' || at === 'bag' || at === 'out';
}

function replaces(later: Decision, earlier: Decision): boolean {
  const [one, other] = [later, earlier].map(({ part, verdict, with: to }) => [part, verdict, to].join());
  return later.session !== earlier.session && one === other && (later.which === null || earlier.which === null);
}

/** The part that makes the position came later than the vehicle. */
function isAdded(own: readonly Piece[], { settings }: Journal): boolean {
  return own.some(({ part }) => part.acquired !== null && part.acquired > settings.arrived);
}
