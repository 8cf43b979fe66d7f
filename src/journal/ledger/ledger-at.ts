/** The ledger as it stood at the end of a day, in totals: from the entries and movements up to then. */
import Fraction from 'fraction.js';
import type { Consumable, EntryKind, IsoDate, Minor, PersonId, SubsystemId } from '../model.ts';
import type { Entry, StockAccount, StockMovement } from '../record.ts';
import type { LedgerSource } from './sums.ts';
import { Running, type Totals } from './totals.ts';

/** A consumable on the shelf: what it was put down at as opening stock, and what is left. */
export interface ShelfAt {
  readonly consumable: Consumable;
  readonly opening: Minor;
  readonly left: StockMovement['left'];
  /** How many of its movements that sums. */
  readonly movements: number;
}

export interface LedgerAt {
  readonly date: IsoDate;
  readonly whole: Totals;
  /** Only what something was booked on. */
  readonly bySubsystem: ReadonlyMap<SubsystemId, Totals>;
  readonly byKind: ReadonlyMap<EntryKind, Totals>;
  readonly byPerson: ReadonlyMap<PersonId, Totals>;
  /** In the order of the catalogue. */
  readonly shelf: readonly ShelfAt[];
}

export function ledgerAt(books: Pick<LedgerSource, 'ledger'>, date: IsoDate): LedgerAt {
  const [at] = ledgerSeries(books, [date]);
  if (at === undefined) throw new RangeError('a series of one day has one ledger');
  return at;
}

/**
 * The ledger at each of several days, in one pass over the entries and one over the movements of stock.
 *
 * @param dates oldest first
 */
export function ledgerSeries({ ledger }: Pick<LedgerSource, 'ledger'>, dates: readonly IsoDate[]): readonly LedgerAt[] {
  const account = new Account();
  const shelves = [...ledger.stock.values()].map((stock) => new ShelfInTime(stock));
  let next = 0;
  return dates.map((date) => {
    for (let entry = ledger.entries[next]; entry && entry.date <= date; entry = ledger.entries[next]) {
      account.add(entry);
      next += 1;
    }
    return { date, ...account.soFar(), shelf: shelves.map((shelf) => shelf.at(date)) };
  });
}

/** Running totals of the whole and of its groups. */
class Account {
  readonly #whole = new Running();
  readonly #bySubsystem = new Map<SubsystemId, Running>();
  readonly #byKind = new Map<EntryKind, Running>();
  readonly #byPerson = new Map<PersonId, Running>();

  add(entry: Entry): void {
    this.#whole.add(entry);
    runningOf(this.#bySubsystem, entry.subsystem).add(entry);
    runningOf(this.#byKind, entry.kind).add(entry);
    if (entry.person !== null) runningOf(this.#byPerson, entry.person).add(entry);
  }

  soFar(): Pick<LedgerAt, 'whole' | 'bySubsystem' | 'byKind' | 'byPerson'> {
    return {
      whole: this.#whole.soFar(),
      bySubsystem: soFar(this.#bySubsystem),
      byKind: soFar(this.#byKind),
      byPerson: soFar(this.#byPerson),
    };
  }
}

function runningOf<Key>(groups: Map<Key, Running>, key: Key): Running {
  const known = groups.get(key);
  if (known) return known;
  const running = new Running();
  groups.set(key, running);
  return running;
}

function soFar<Key>(groups: ReadonlyMap<Key, Running>): Map<Key, Totals> {
  return new Map([...groups].map(([key, running]) => [key, running.soFar()]));
}

/** One consumable, followed from movement to movement. */
class ShelfInTime {
  readonly #account: StockAccount;
  #opening = 0;
  #left: StockMovement['left'] = { amount: new Fraction(0), value: 0 };
  #next = 0;

  constructor(account: StockAccount) {
    this.#account = account;
  }

  /** @param date no earlier than the one asked for before */
  at(date: IsoDate): ShelfAt {
    const { consumable, movements } = this.#account;
    for (let one = movements[this.#next]; one && one.date <= date; one = movements[this.#next]) {
      if (one.kind === 'opening') this.#opening += one.value;
      this.#left = one.left;
      this.#next += 1;
    }
    return { consumable, opening: this.#opening, left: this.#left, movements: this.#next };
  }
}
