import type { IsoDate } from '../model.ts';

/**
 * A value that changes only on some days, made once for each such day that is asked for. Views of every
 * month's end share it where nothing changed in between, so all views together cost no more than the changes.
 */
export class Stepwise<T> {
  readonly #dates: readonly IsoDate[];
  readonly #make: (date: IsoDate) => T;
  readonly #made: (T | undefined)[] = [];

  /**
   * @param dates every day on which the value may change, in any order
   * @param make the value at the end of a day
   */
  constructor(dates: Iterable<IsoDate>, make: (date: IsoDate) => T) {
    this.#dates = [...new Set(dates)].sort();
    this.#make = make;
  }

  at(date: IsoDate): T {
    const index = lastUpTo(this.#dates, date);
    const day = this.#dates[index];
    if (day === undefined) return this.#make(date);
    const known = this.#made[index];
    if (known !== undefined) return known;
    const made = this.#make(day);
    this.#made[index] = made;
    return made;
  }
}

/** The index of the last of the sorted dates that is not later, or -1. */
export function lastUpTo(dates: readonly IsoDate[], date: IsoDate): number {
  let low = 0;
  let high = dates.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((dates[middle] as IsoDate) <= date) low = middle + 1;
    else high = middle;
  }
  return low - 1;
}
