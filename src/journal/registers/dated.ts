import type { IsoDate } from '../model.ts';
import { compareText } from '../values/text-order.ts';
import { lastUpTo } from './stepwise.ts';

/** Things by their day, so that those of a stretch of time are found without going through all of them. */
export class Dated<T> {
  readonly #dates: readonly IsoDate[];
  readonly #things: readonly T[];

  /** Things of one day keep the order they come in. */
  constructor(things: readonly T[], dateOf: (thing: T) => IsoDate) {
    this.#things = [...things].sort((a, b) => compareText(dateOf(a), dateOf(b)));
    this.#dates = this.#things.map(dateOf);
  }

  /** What is later than the end of the first day and not later than the end of the second, by day. */
  within(after: IsoDate, upTo: IsoDate): readonly T[] {
    return this.#things.slice(lastUpTo(this.#dates, after) + 1, lastUpTo(this.#dates, upTo) + 1);
  }
}
