/** Open items and milestones, told once more from the rules of the format alone. */
import type { ItemKind, Journal, MilestoneId, Place, Session } from '../../src/journal/model.ts';
import type { Refusal, When } from './workshop.ts';

export interface Item {
  readonly kind: ItemKind;
  readonly opened: When;
  due: MilestoneId | null;
  closed: When | null;
}

export class Items {
  readonly #milestones: readonly MilestoneId[];
  readonly items = new Map<string, Item>();
  readonly reached = new Map<MilestoneId, When>();
  readonly refused: Refusal[] = [];

  constructor({ milestones }: Journal) {
    this.#milestones = milestones.map(({ id }) => id);
  }

  /** Opens, puts off and closes come before what a note says was reached. */
  evening({ opens, closes, defers, reached }: Session, when: When): void {
    for (const { id, kind, before, place } of opens) {
      this.#refuse(this.items.has(id), place, `${id} is opened twice`);
      this.#refuse(before !== null && this.reached.has(before), place, `${before} was reached before`);
      this.items.set(id, { kind, opened: when, due: before, closed: null });
    }
    for (const { id, to, place } of defers) {
      this.#refuse(this.reached.has(to), place, `${to} was reached before`);
      this.#open(id, place, (item) => (item.due = to));
    }
    for (const { id, place } of closes) this.#open(id, place, (item) => (item.closed = when));
    for (const { milestone, withOpen, place } of reached) {
      const held = this.holding(milestone).filter((id) => !withOpen.includes(id));
      this.#refuse(held.length > 0, place, `${milestone} is held by ${held}`);
      this.#refuse(this.reached.has(milestone), place, `${milestone} is reached twice`);
      this.reached.set(milestone, when);
    }
  }

  #refuse(wrong: boolean, place: Place, why: string): void {
    if (wrong) this.refused.push({ place, why });
  }

  #open(id: string, place: Place, change: (item: Item) => void): void {
    const item = this.items.get(id);
    this.#refuse(item === undefined || item.closed !== null, place, `${id} is not open`);
    if (item && item.closed === null) change(item);
  }

  /** What is open and due before a milestone, or before one that stands before it. */
  holding(milestone: MilestoneId): readonly string[] {
    const before = this.#milestones.slice(0, this.#milestones.indexOf(milestone) + 1);
    return [...this.items].filter(([, { due, closed }]) => closed === null && due !== null && before.includes(due)).map(([id]) => id);
  }

  /** What is open and due before this very milestone. */
  ownOf(milestone: MilestoneId): readonly string[] {
    return this.holding(milestone).filter((id) => this.items.get(id)?.due === milestone);
  }
}
