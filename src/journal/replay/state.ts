import type { PartId, Place, PositionId, SessionId, Whereabouts } from '../model.ts';
import type { Deed, Moment, Stay } from '../record.ts';
import { type Seat, whereSeated } from './seat.ts';
import { sameWhere } from './words.ts';

/** So many of a part that came to one place together. Piles never change; moving a share makes new ones. */
export interface Pile {
  readonly part: PartId;
  readonly count: number;
  /** Which of a numbered lot; null where they cannot be told apart. */
  readonly which: readonly number[] | null;
  readonly where: Whereabouts;
  /** The place it stands in, on the vehicle or in another part; null while it stands in none. */
  readonly seat: Seat | null;
  readonly from: Moment;
  /** What put it there: an entry of a note, or the catalogue. */
  readonly cause: Place;
  /** Running number of the moves; a share keeps that of its pile. */
  readonly order: number;
}

/** A stay that has ended, with the order of the move that began it. */
export interface Ended {
  readonly stay: Stay;
  readonly order: number;
}

/** Where everything is while sessions are replayed. Only `commit` changes it. */
export class State {
  readonly #piles = new Map<PartId, readonly Pile[]>();
  readonly #seated = new Map<PositionId, Set<PartId>>();
  readonly #inside = new Map<PartId, Set<PartId>>();
  readonly #bags = new Map<number, Set<PartId>>();
  readonly #stoodLast = new Map<PositionId, { readonly part: PartId; readonly since: number }>();
  readonly #doubted = new Set<PartId>();
  readonly #madeRoom = new Map<PartId, SessionId>();
  readonly #ended: Ended[] = [];
  readonly deeds: Deed[] = [];
  #order = 0;

  /** Of a part of which one thing was told nobody knows how many are where; of one thing that is alone, the note says. */
  doubt(part: PartId): void {
    if (this.pilesOf(part).reduce((sum, { count }) => sum + count, 0) > 1) this.#doubted.add(part);
  }

  /** Whether any of a part stands at a position, on the vehicle or in another part, or ever did. */
  hasStood(part: PartId): boolean {
    const isPlace = ({ at }: Whereabouts): boolean => at === 'fitted' || at === 'in';
    return (
      this.pilesOf(part).some(({ seat }) => seat !== null) ||
      this.deeds.some((deed) => deed.part === part && (isPlace(deed.from) || isPlace(deed.to)))
    );
  }

  /** What is told of such a part would only echo what was told. */
  isInDoubt(part: PartId): boolean {
    return this.#doubted.has(part);
  }

  /** Remembers that a part was put out of the way of another in a session, which was told. */
  makeRoom(part: PartId, session: SessionId): void {
    this.#madeRoom.set(part, session);
  }

  /** Whether a part was put out of the way of another in the session. */
  hasMadeRoom(part: PartId, session: SessionId): boolean {
    return this.#madeRoom.get(part) === session;
  }

  nextOrder(): number {
    this.#order += 1;
    return this.#order;
  }

  /** The piles of a part, oldest first. */
  pilesOf(part: PartId): readonly Pile[] {
    return this.#piles.get(part) ?? [];
  }

  /** What stands in a seat, part by part. */
  standingIn({ position, carrier }: Pick<Seat, 'position' | 'carrier'>): readonly Pile[] {
    const isThere = ({ seat }: Pile) => seat?.position === position && seat.carrier === carrier;
    return [...(this.#seated.get(position) ?? [])].flatMap((part) => this.pilesOf(part).filter(isThere));
  }

  /** The part that stands at a position on the vehicle, else the one that was last put there; null when none ever was. */
  holderAt(position: PositionId): PartId | null {
    const isOn = ({ where }: Pile) => where.at === 'fitted' && where.position === position;
    const on = [...(this.#seated.get(position) ?? [])].find((part) => this.pilesOf(part).some(isOn));
    return on ?? this.#stoodLast.get(position)?.part ?? null;
  }

  /** Parts that stand in a part, in the order in which they came; what is in those is not among them. */
  inside(carrier: PartId): readonly PartId[] {
    return [...(this.#inside.get(carrier) ?? [])];
  }

  /** Everything in a part, and in what is in it. */
  allInside(carrier: PartId): readonly PartId[] {
    return this.inside(carrier).flatMap((part) => [part, ...this.allInside(part)]);
  }

  /** Where a part is as a whole, for what stands in it. */
  whereOf(part: PartId): Whereabouts {
    return this.pilesOf(part)[0]?.where ?? { at: 'missing' };
  }

  /** Parts with a pile in the bag. */
  inBag(bag: number): readonly PartId[] {
    return [...(this.#bags.get(bag) ?? [])];
  }

  /** Puts a part's piles in the place of its earlier ones; what stands in the part goes with it. */
  commit(part: PartId, piles: readonly Pile[], ended: readonly Ended[] = [], deeds: readonly Deed[] = []): void {
    for (const pile of this.pilesOf(part)) this.#forget(pile);
    for (const pile of piles) this.#note(pile);
    this.#piles.set(part, piles);
    this.#ended.push(...ended);
    this.deeds.push(...deeds);
    for (const inner of this.inside(part)) this.#follow(inner, part, piles[piles.length - 1], deeds.at(-1) ?? null);
  }

  /** Moves what stands in a carrier to where that has gone. What has gone for good stands in nothing any more. */
  #follow(part: PartId, carrier: PartId, cause: Pile | undefined, deed: Deed | null): void {
    const to = this.whereOf(carrier);
    if (!cause) return;
    const ended: Ended[] = [];
    const deeds: Deed[] = [];
    const piles = this.pilesOf(part).map((pile) => {
      if (pile.seat?.carrier !== carrier) return pile;
      const where = whereSeated(pile.seat, to);
      if (sameWhere(where, pile.where)) return pile;
      ended.push({ stay: stayOf(pile, pile.count, pile.which, cause.from), order: pile.order });
      if (where.at === 'gone' && deed?.did === 'gone') deeds.push(goneWith(deed, pile, where));
      const seat = where.at === 'gone' ? null : pile.seat;
      return { ...pile, where, seat, from: cause.from, cause: cause.cause, order: this.nextOrder() };
    });
    if (ended.length > 0) this.commit(part, piles, ended, deeds);
  }

  #forget({ part, where, seat }: Pile): void {
    if (seat) this.#seated.get(seat.position)?.delete(part);
    if (seat?.carrier) this.#inside.get(seat.carrier)?.delete(part);
    if (where.at === 'bag') this.#bags.get(where.bag)?.delete(part);
  }

  #note({ part, where, seat }: Pile): void {
    if (seat) {
      addTo(this.#seated, seat.position, part);
      if (seat.carrier !== null) addTo(this.#inside, seat.carrier, part);
      if (seat.since >= (this.#stoodLast.get(seat.position)?.since ?? 0)) this.#stoodLast.set(seat.position, { part, since: seat.since });
    }
    if (where.at === 'bag') addTo(this.#bags, where.bag, part);
  }

  /** Every stay, ended or not, by part, in the order in which the moves began them. */
  stays(): Map<PartId, Stay[]> {
    const byPart = new Map<PartId, Ended[]>([...this.#piles.keys()].map((part) => [part, []]));
    for (const ended of this.#ended) byPart.get(ended.stay.part)?.push(ended);
    for (const [part, piles] of this.#piles) {
      for (const pile of piles) byPart.get(part)?.push({ stay: stayOf(pile, pile.count, pile.which, null), order: pile.order });
    }
    return new Map([...byPart].map(([part, list]) => [part, inOrder(list)]));
  }
}

function addTo<K>(sets: Map<K, Set<PartId>>, key: K, part: PartId): void {
  const parts = sets.get(key);
  if (parts) parts.add(part);
  else sets.set(key, new Set([part]));
}

function goneWith(deed: Deed, { part, count, which, where: from, seat }: Pile, to: Whereabouts): Deed {
  return { ...deed, part, count, which, from, to, position: seat?.position ?? part };
}

function inOrder(list: Ended[]): Stay[] {
  return list.sort((a, b) => a.order - b.order).map(({ stay }) => stay);
}

/** A pile, or a share of it, as the stay it was until the moment given. */
export function stayOf({ part, where, from }: Pile, count: number, which: readonly number[] | null, to: Moment | null): Stay {
  return { part, count, which, where, from, to };
}
