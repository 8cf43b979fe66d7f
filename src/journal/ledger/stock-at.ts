import Fraction from 'fraction.js';
import type { Consumable, IsoDate, Minor } from '../model.ts';
import type { StockAccount, StockMovement } from '../record.ts';
import type { LedgerSource } from './sums.ts';

/** So much of a consumable, in its unit, and what it cost. */
export interface Holding {
  readonly amount: Fraction;
  readonly value: Minor;
}

/** The stock of a consumable at a date: opening + bought = used + left, in quantity and in money. */
export interface StockRow {
  readonly consumable: Consumable;
  readonly opening: Holding;
  /** Without what was given back. */
  readonly bought: Holding;
  /** Used on the job, with what a stock-take found missing and without what it found over. */
  readonly used: Holding;
  readonly left: Holding;
  /** Up to the date, in order. */
  readonly movements: readonly StockMovement[];
}

/** The stock of every consumable at a date, in the order of the catalogue. */
export function stockAt({ ledger }: Pick<LedgerSource, 'ledger'>, at: IsoDate | null): StockRow[] {
  return [...ledger.stock.values()].map((account) => stockOf(account, at));
}

/** The stock of one consumable at a date. */
export function stockOf({ consumable, movements: all }: StockAccount, at: IsoDate | null): StockRow {
  const movements = at === null ? all : all.filter((movement) => movement.date <= at);
  const of = (...kinds: StockMovement['kind'][]) => holding(movements.filter((movement) => kinds.includes(movement.kind)));
  const used = of('used', 'counted');
  return {
    consumable,
    opening: of('opening'),
    bought: of('bought', 'returned'),
    used: { amount: used.amount.neg(), value: used.value === 0 ? 0 : -used.value },
    left: movements.at(-1)?.left ?? holding([]),
    movements,
  };
}

function holding(movements: readonly StockMovement[]): Holding {
  let [amount, value] = [new Fraction(0), 0];
  for (const movement of movements) {
    amount = amount.add(movement.amount);
    value += movement.value;
  }
  return { amount, value };
}
