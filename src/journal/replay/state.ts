import type { PartId, Place, PositionId, Whereabouts } from '../model.ts';
import type { Deed, Moment, Stay } from '../record.ts';

/** So many of a part that came to one place together. Piles never change; moving a share makes new ones. */
export interface Pile {
  readonly part: PartId;
  readonly count: number;
  readonly where: Whereabouts;
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
  readonly #fitted = new Map<PositionId, Map<PartId, number>>();
  readonly #bags = new Map<number, Set<PartId>>();
  readonly #ended: Ended[] = [];
  readonly deeds: Deed[] = [];
  #order = 0;

  nextOrder(): number {
    this.#order += 1;
    return this.#order;
  }

  /** The piles of a part, oldest first. */
  pilesOf(part: PartId): readonly Pile[] {
    return this.#piles.get(part) ?? [];
  }

  /** How many of each part are fitted at a position. */
  occupants(position: PositionId): ReadonlyMap<PartId, number> {
    return this.#fitted.get(position) ?? NOBODY;
  }

  /** Parts with a pile in the bag. */
  inBag(bag: number): readonly PartId[] {
    return [...(this.#bags.get(bag) ?? [])];
  }

  /** Puts a part's piles in the place of its earlier ones. */
  commit(part: PartId, piles: readonly Pile[], ended: readonly Ended[] = [], deeds: readonly Deed[] = []): void {
    for (const pile of this.pilesOf(part)) this.#forget(pile);
    for (const pile of piles) this.#note(pile);
    this.#piles.set(part, piles);
    this.#ended.push(...ended);
    this.deeds.push(...deeds);
  }

  #forget({ part, where }: Pile): void {
    if (where.at === 'fitted') this.#fitted.get(where.position)?.delete(part);
    if (where.at === 'bag') this.#bags.get(where.bag)?.delete(part);
  }

  #note({ part, where, count }: Pile): void {
    if (where.at === 'fitted') {
      const occupants = this.#fitted.get(where.position) ?? new Map<PartId, number>();
      occupants.set(part, (occupants.get(part) ?? 0) + count);
      this.#fitted.set(where.position, occupants);
    }
    if (where.at === 'bag') {
      const parts = this.#bags.get(where.bag) ?? new Set<PartId>();
      this.#bags.set(where.bag, parts.add(part));
    }
  }

  /** Every stay, ended or not, by part, in the order in which the moves began them. */
  stays(): Map<PartId, Stay[]> {
    const byPart = new Map<PartId, Ended[]>([...this.#piles.keys()].map((part) => [part, []]));
    for (const ended of this.#ended) byPart.get(ended.stay.part)?.push(ended);
    for (const [part, piles] of this.#piles) {
      for (const pile of piles) byPart.get(part)?.push({ stay: stayOf(pile, pile.count, null), order: pile.order });
    }
    return new Map([...byPart].map(([part, list]) => [part, inOrder(list)]));
  }
}

const NOBODY: ReadonlyMap<PartId, number> = new Map();

function inOrder(list: Ended[]): Stay[] {
  return list.sort((a, b) => a.order - b.order).map(({ stay }) => stay);
}

/** A pile, or a share of it, as the stay it was until the moment given. */
export function stayOf({ part, where, from }: Pile, count: number, to: Moment | null): Stay {
  return { part, count, where, from, to };
}
