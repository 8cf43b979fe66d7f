import { pounds } from './money-text.ts';
import type { NoteDraft } from './note-draft.ts';
import type { Random } from './random.ts';
import { CONSUMABLES, type ConsumableWords, SELLERS } from './trade-words.ts';

/** The shelf of consumables: never gives out more than it holds. */
export class StockRoom {
  private readonly random: Random;
  /** In the smaller unit. */
  private readonly levels: Map<string, number>;

  constructor(random: Random, opening: ReadonlyMap<string, number>) {
    this.random = random;
    this.levels = new Map(CONSUMABLES.map((one) => [one.id, (opening.get(one.id) ?? 0) * one.perUnit]));
  }

  /** Uses something on a part or subsystem, or buys it when the shelf is nearly empty. */
  useOrBuy(on: string, note: NoteDraft): void {
    const stuff = this.random.pick(CONSUMABLES);
    const level = this.levels.get(stuff.id) ?? 0;
    const amount = this.random.between(1, 20) * (stuff.perUnit === 1000 ? 10 : 2);
    if (amount > level) {
      this.buy(stuff, note);
      return;
    }
    this.levels.set(stuff.id, level - amount);
    note.add('used', { consumable: stuff.id, amount: `${amount} ${stuff.small}`, on });
  }

  private buy(stuff: ConsumableWords, note: NoteDraft): void {
    const units = this.random.between(1, 5);
    this.levels.set(stuff.id, (this.levels.get(stuff.id) ?? 0) + units * stuff.perUnit);
    const cost = pounds(stuff.price * units + this.random.below(60));
    const from = this.random.pick(SELLERS);
    note.add('bought', { consumable: stuff.id, amount: `${units} ${stuff.unit}`, cost, tax: '20%', from });
    note.sentences.push(`More [${stuff.name.toLowerCase()}](consumable:${stuff.id}) on the shelf.`);
  }
}
