import { sumOf } from '../../journal/ledger/sums.ts';
import type { Minor } from '../../journal/model.ts';
import type { Entry } from '../../journal/record.ts';

/** Entries added up in the columns of an account: time, what was paid, what the job cost. All gross. */
export interface Totals {
  readonly minutes: number;
  readonly paid: Minor;
  readonly cost: Minor;
  /** The job cost without labour: what a budget of money is held against. */
  readonly costWithoutLabour: Minor;
  readonly entries: number;
}

export function totalsOf(entries: readonly Entry[]): Totals {
  const cost = entries.filter((entry) => entry.cost);
  return {
    minutes: sumOf(entries).minutes,
    paid: sumOf(entries.filter((entry) => entry.paid)).gross,
    cost: sumOf(cost).gross,
    costWithoutLabour: sumOf(cost.filter(({ kind }) => kind !== 'labour')).gross,
    entries: entries.length,
  };
}
