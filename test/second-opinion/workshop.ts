/**
 * Where everything is, replayed once more from the rules of the format alone. It shares no code with the record: a lot
 * is taken to pieces, each piece is somewhere, and a note moves pieces.
 */
import type { ActionWord, IsoDate, Journal, Part, PartEntry, PartId, Place, PositionId, Session } from '../../src/journal/model.ts';

/** Where a piece is by itself; what is in another part goes where that part goes. */
export type Spot =
  | { readonly at: 'seat'; readonly position: PositionId; readonly carrier: PartId | null }
  | { readonly at: 'stores'; readonly store: string | null }
  | { readonly at: 'bag'; readonly bag: number }
  | { readonly at: 'out'; readonly firm: string }
  | { readonly at: 'gone'; readonly how: string }
  | { readonly at: 'missing' | 'not-yet' | 'considered' };

/** When something became so: in which note, or on which day of the catalogue. */
export interface When {
  readonly date: IsoDate;
  readonly session: string | null;
  /** Its place in time. */
  readonly tick: number;
}

/** What the rules forbid, and where it stands. */
export interface Refusal {
  readonly place: Place;
  readonly why: string;
}

/** A count took some of a lot, and the rules leave open which of them. */
export interface LeftOpen {
  readonly part: PartId;
  readonly place: Place;
  /** They lay in several places and the entry does not say `from`; or something was done to some of them only. */
  readonly of: 'places' | 'work';
}

export interface Piece {
  readonly part: Part;
  /** From 1. */
  readonly number: number;
  spot: Spot;
  since: When;
  /** Where it was when last looked at, if it is in another part. */
  chain: string | null;
}

const WITH_A_PLACE: readonly ActionWord[] = ['removed', 'stored', 'sent-out', 'returned', 'acquired', 'made'];
const COMES_BACK = ['sold', 'given', 'returned', 'lost'];

export class Workshop {
  readonly #journal: Journal;
  readonly #pieces = new Map<PartId, Piece[]>();
  /** What stood last where other things are places in. */
  readonly #stoodLast = new Map<PositionId, PartId>();
  /** Of each entry that moved or worked on something: on which pieces. */
  readonly done: { readonly entry: PartEntry; readonly pieces: readonly Piece[]; readonly when: When }[] = [];
  /** A sound journal has none. */
  readonly refused: Refusal[] = [];
  /** What was laid into bags, in order. */
  readonly laid: { readonly bag: number; readonly part: PartId }[] = [];
  readonly leftOpen: LeftOpen[] = [];
  /** What has stood in the part that it was in at the start, while that was here. */
  readonly cameWithin = new Set<Piece>();

  constructor(journal: Journal, start: When) {
    this.#journal = journal;
    for (const part of journal.parts.values()) {
      const spotOf = (number: number) => (wasMissing(part, number) ? { at: 'missing' as const } : asFound(part, journal));
      const all = Array.from(
        { length: part.count },
        (_, n): Piece => ({ part, number: n + 1, spot: spotOf(n + 1), since: start, chain: null }),
      );
      this.#pieces.set(part.id, all);
      if (part.makesPosition && part.count === 1) this.#stoodLast.set(part.id, part.id);
    }
    this.#lookAtChains(start);
  }

  of(part: PartId): readonly Piece[] {
    return this.#pieces.get(part) ?? [];
  }

  all(): readonly Piece[] {
    return [...this.#pieces.values()].flat();
  }

  /** What stands at a position, in whatever it is that is here. */
  at(position: PositionId): readonly Piece[] {
    return this.all().filter((piece) => piece.spot.at === 'seat' && piece.spot.position === position && isBrought(this.endOf(piece)));
  }

  /** Where the chain of what a piece is in ends; null on the vehicle. */
  endOf({ spot }: Piece): Exclude<Spot, { at: 'seat' }> | null {
    if (spot.at !== 'seat') return spot;
    const carrier = spot.carrier === null ? null : this.#one(spot.carrier);
    return carrier && this.endOf(carrier);
  }

  /** The chain, from the inside out, as one text; of what is on the vehicle only the first link. */
  whereIs(piece: Piece): string {
    const { spot } = piece;
    if (spot.at !== 'seat') return Object.values(spot).join(' ');
    const place = `at ${spot.position}${spot.carrier === null ? '' : ` in ${spot.carrier}`}`;
    const end = this.endOf(piece);
    if (end === null) return `on the vehicle ${place}`;
    // What is in a part that nobody has brought is as little here as that.
    if (!isBrought(end)) return end.at;
    return `${place}, ${this.whereIs(this.#one(spot.carrier as PartId))}`;
  }

  /** What is in a part is elsewhere from the entry on that moved the part; an entry that puts it back moves nothing in it. */
  #lookAtChains(when: When): void {
    for (const piece of this.all()) {
      if (piece.spot.at !== 'seat' || piece.spot.carrier === null) continue;
      if (piece.part.within !== null && isBrought(this.endOf(piece))) this.cameWithin.add(piece);
      const chain = this.whereIs(piece);
      if (piece.chain !== chain && piece.chain !== null) piece.since = when;
      piece.chain = chain;
    }
  }

  #refuse({ place }: PartEntry, why: string): void {
    this.refused.push({ place, why });
  }

  #inside(carrier: PartId): readonly Piece[] {
    return this.all().filter(({ spot }) => spot.at === 'seat' && spot.carrier === carrier);
  }

  /** Whether a part is a piece, or is in it. */
  #isIn(part: PartId, outer: PartId): boolean {
    const { spot } = this.#one(part);
    return part === outer || (spot.at === 'seat' && spot.carrier !== null && this.#isIn(spot.carrier, outer));
  }

  #one(part: PartId): Piece {
    return this.of(part)[0] as Piece;
  }

  /** What the catalogue says came on this day; where a note of the day tells of it, it came then. */
  catalogueDay(when: When): void {
    const told = new Set(this.#journal.sessions.filter(({ date }) => date === when.date).flatMap(bringsOf));
    for (const piece of this.all()) {
      const { part, spot } = piece;
      if (spot.at === 'not-yet' && part.acquired === when.date && !told.has(part.id))
        this.#put(piece, { at: 'stores', store: part.store }, when);
    }
  }

  /** Every entry of a note under `parts`, as written. */
  evening(session: Session, when: When): void {
    for (const entry of session.parts) this.#entry(entry, session, when);
  }

  #entry(entry: PartEntry, session: Session, when: When): void {
    const steps = entry.did.map((word, n) => this.#step(word, n, entry, session));
    const path = (piece: Piece): readonly Spot[] | null => {
      const walked: Spot[] = [];
      for (const step of steps) {
        const spot = step({ ...piece, spot: walked.at(-1) ?? piece.spot });
        if (spot === null) return null;
        walked.push(spot);
      }
      return walked;
    };
    const ready = this.of(entry.part).filter((piece) => isFrom(piece, entry) && path(piece) !== null);
    const chosen = this.#choose(entry, ready);
    for (const piece of chosen) for (const spot of path(piece) ?? []) this.#put(piece, spot, when);
    this.#lookAtChains(when);
    if (chosen.length > 0) this.done.push({ entry, pieces: chosen, when });
    this.#notTooMany(entry);
  }

  /** Those that an entry is about, of those that it can be about. */
  #choose(entry: PartEntry, ready: readonly Piece[]): readonly Piece[] {
    const { part, count, which } = entry;
    const wanted = which === null ? ready : ready.filter(({ number }) => which.includes(number));
    const many = count ?? which?.length ?? Math.max(1, wanted.length);
    if (wanted.length < many) {
      this.#refuse(entry, `${many} of ${part}, and ${wanted.length} can be`);
      return [];
    }
    if (many < wanted.length) {
      if (wanted[0]?.part.numbered !== null) this.#refuse(entry, `which ${many} of ${part}?`);
      else if (new Set(wanted.map((piece) => this.whereIs(piece))).size > 1) this.leftOpen.push({ part, place: entry.place, of: 'places' });
      else if (new Set(wanted.map((piece) => this.#workOn(piece))).size > 1) this.leftOpen.push({ part, place: entry.place, of: 'work' });
    }
    // Uncounted, what comes from somebody may be what never was here, or what had gone.
    const had = new Set(wanted.map(({ spot }) => spot.at === 'gone'));
    if (count === null && which === null && had.size > 1) this.leftOpen.push({ part, place: entry.place, of: 'places' });
    return wanted.slice(0, many);
  }

  #workOn(piece: Piece): string {
    return this.done.flatMap(({ pieces }, n) => (pieces.includes(piece) ? [n] : [])).join();
  }

  /**
   * What a word does to a piece: its new spot, or null where it cannot be. `to` of an entry is the firm where it sends
   * something out, else the place of the last move.
   */
  #step(word: ActionWord, n: number, entry: PartEntry, session: Session): (piece: Piece) => Spot | null {
    const last = entry.did.findLastIndex((one) => WITH_A_PLACE.includes(one));
    const sent = entry.did.indexOf('sent-out');
    const to = n === (sent < 0 ? last : sent) ? entry.to : null;
    const lying = (otherwise: string | null = null): Spot =>
      to?.bag ? { at: 'bag', bag: to.bag } : { at: 'stores', store: to?.name ?? otherwise };
    const here = (piece: Piece) => isHere(this.endOf(piece));
    switch (word) {
      case 'removed': {
        const bag = entry.to === null ? session.bags.find(({ off }) => off === entry.part)?.bag : undefined;
        return (piece) => (piece.spot.at === 'seat' && here(piece) ? (bag === undefined ? lying() : { at: 'bag', bag }) : null);
      }
      case 'fitted':
        return ({ spot, part }) => (spot.at === 'stores' || spot.at === 'bag' ? this.#seat(entry.at ?? part.position, entry) : null);
      case 'stored':
        return ({ spot }) => (spot.at === 'stores' || spot.at === 'bag' ? lying() : null);
      case 'sent-out':
        return ({ spot }) => (spot.at === 'stores' || spot.at === 'bag' ? { at: 'out', firm: to?.name ?? '' } : null);
      case 'returned':
        return ({ spot }) => (spot.at === 'out' ? lying() : null);
      case 'acquired':
      case 'made':
        return (piece) => (this.#mayCome(piece, entry, session) ? lying(piece.part.store) : null);
      case 'gone':
        return ({ spot }) => (spot.at === 'stores' || spot.at === 'bag' || spot.at === 'out' ? { at: 'gone', how: entry.how ?? '' } : null);
      default:
        return (piece) => (here(piece) || this.endOf(piece)?.at === 'out' ? piece.spot : null);
    }
  }

  #mayCome(piece: Piece, { from, did }: PartEntry, { date }: Session): boolean {
    const { part } = piece;
    const end = this.endOf(piece);
    if (end?.at === 'not-yet') return part.acquired === date;
    if (end?.at === 'gone') return from !== null && COMES_BACK.includes(end.how);
    return end?.at === 'considered' || (end?.at === 'missing' && did.includes('acquired'));
  }

  /** The place that a part is fitted to: in what stands at the outer one on the vehicle, else in what stood there last if it is here. */
  #seat(position: PositionId, { into, part }: PartEntry): Spot | null {
    const outer = this.#journal.positions.get(position)?.inside ?? null;
    if (outer === null) return { at: 'seat', position, carrier: null };
    const standing = this.at(outer).find((piece) => this.endOf(piece) === null);
    const carrier = into[0] ?? standing?.part.id ?? this.#stoodLast.get(outer);
    if (carrier === undefined || this.#isIn(carrier, part) || !isHere(this.endOf(this.#one(carrier)))) return null;
    return { at: 'seat', position, carrier };
  }

  #put(piece: Piece, spot: Spot, when: When): void {
    const moved = Object.values(spot).join() !== Object.values(piece.spot).join();
    if (moved) Object.assign(piece, { since: when, chain: null });
    piece.spot = spot;
    if (moved && spot.at === 'bag') this.laid.push({ bag: spot.bag, part: piece.part.id });
    if (spot.at === 'gone') for (const inner of this.#inside(piece.part.id)) this.#put(inner, spot, when);
    if (moved && spot.at === 'seat') this.#stoodLast.set(spot.position, piece.part.id);
  }

  /** A position never holds more than its count. */
  #notTooMany(entry: PartEntry): void {
    const { at, part } = entry;
    const position = at ?? this.#journal.parts.get(part)?.position ?? part;
    const standing = Map.groupBy(this.at(position), ({ spot }) => (spot.at === 'seat' ? spot.carrier : null));
    const most = this.#journal.positions.get(position)?.count ?? 1;
    for (const those of standing.values()) if (those.length > most) this.#refuse(entry, `${those.length} at ${position}`);
  }
}

/** Of a lot that is only counted the last ones. */
function wasMissing({ count, missing, missingWhich }: Part, number: number): boolean {
  return missingWhich === null ? number > count - missing : missingWhich.includes(number);
}

function asFound(part: Part, { settings }: Journal): Spot {
  if (part.acquired !== null && part.acquired > settings.arrived) return { at: 'not-yet' };
  if (part.within !== null) return { at: 'seat', position: part.position, carrier: part.within };
  if (part.found === 'missing' || part.found === 'considered') return { at: part.found };
  if (part.found === 'fitted' && part.acquired === null) return { at: 'seat', position: part.position, carrier: part.inside };
  return part.bag === null ? { at: 'stores', store: part.store } : { at: 'bag', bag: part.bag };
}

function bringsOf({ parts }: Session): readonly PartId[] {
  return parts.filter(({ did }) => did.includes('acquired') || did.includes('made')).map(({ part }) => part);
}

function isBrought(end: Spot | null): boolean {
  return end?.at !== 'considered' && end?.at !== 'not-yet';
}

function isHere(end: Spot | null): boolean {
  return end === null || end.at === 'stores' || end.at === 'bag';
}

/** `from` says which of them; of what comes it says who had it. */
function isFrom({ spot }: Piece, { from, did }: PartEntry): boolean {
  if (from === null || did.includes('acquired') || did.includes('made')) return true;
  if (from.bag !== null) return spot.at === 'bag' && spot.bag === from.bag;
  if (spot.at === 'stores') return spot.store === from.name;
  if (spot.at === 'out') return spot.firm === from.name;
  return spot.at === 'seat' && (spot.position === from.name || spot.carrier === from.name);
}
