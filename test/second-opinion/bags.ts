/** Which bag was filled and emptied when, told once more from the rules of the format alone. */
import type { Journal, PartId, Place, Session } from '../../src/journal/model.ts';
import type { Refusal, When, Workshop } from './workshop.ts';

export interface Filling {
  readonly filled: When;
  emptied: When | null;
  /** Parts that have been in it. */
  readonly held: Set<PartId>;
}

export class Bags {
  /** By number, oldest first. */
  readonly fillings = new Map<number, Filling[]>();
  readonly refused: Refusal[] = [];

  /** A part of the catalogue may lie in a bag at the start: then it was full. */
  constructor({ parts }: Journal, start: When) {
    for (const { bag } of parts.values()) if (bag !== null && !this.#full(bag)) this.#fill(bag, start, null);
    for (const { bag, id } of parts.values()) if (bag !== null) this.#full(bag)?.held.add(id);
  }

  #full(bag: number): Filling | null {
    const last = this.fillings.get(bag)?.at(-1);
    return last === undefined || last.emptied !== null ? null : last;
  }

  #fill(bag: number, when: When, place: Place | null): void {
    if (place !== null && this.#full(bag)) this.refused.push({ place, why: `bag ${bag} is full` });
    this.fillings.set(bag, [...(this.fillings.get(bag) ?? []), { filled: when, emptied: null, held: new Set() }]);
  }

  /** A note that empties a full bag may fill it again; one that was not full was filled tonight. What goes into a bag that the note does not describe opens it. */
  evening({ bags, emptied, parts }: Session, when: When): void {
    const before = emptied.filter(({ bag }) => this.#full(bag));
    for (const { bag, place } of before) this.#empty(bag, when, place);
    for (const { bag, place } of bags) this.#fill(bag, when, place);
    const described = new Set(bags.map(({ bag }) => bag));
    for (const { to, place } of parts) {
      if (typeof to?.bag !== 'number' || described.has(to.bag)) continue;
      described.add(to.bag);
      this.#fill(to.bag, when, place);
    }
    for (const one of emptied) if (!before.includes(one)) this.#empty(one.bag, when, one.place);
  }

  /** It was put in since the bag was filled, and the bag is full. */
  #isOf(bag: number, since: When): boolean {
    const full = this.#full(bag);
    return full !== null && since.tick >= full.filled.tick;
  }

  #empty(bag: number, when: When, place: Place): void {
    const filling = this.#full(bag);
    if (filling) filling.emptied = when;
    else this.refused.push({ place, why: `bag ${bag} is not full` });
  }

  /** Looks what lies in the bags when a note is over: what was emptied has nothing of the catalogue in it. */
  look(shop: Workshop, emptied: Session['emptied'] = []): void {
    for (const { bag, place } of emptied) {
      const left = shop.all().some(({ spot, since }) => spot.at === 'bag' && spot.bag === bag && !this.#isOf(bag, since));
      if (left) this.refused.push({ place, why: `something is left in bag ${bag}` });
    }
    for (const { bag, part } of shop.laid.splice(0)) this.fillings.get(bag)?.at(-1)?.held.add(part);
  }
}
