import type { Minor } from '../model.ts';
import type { Entry } from '../record.ts';

/** Entries added up in the columns of an account: time, what was paid, what the job cost. All gross. */
export interface Totals {
  readonly minutes: number;
  readonly paid: Minor;
  readonly cost: Minor;
  /** The job cost without labour: what a budget of money is held against. */
  readonly costWithoutLabour: Minor;
}

/** The totals of entries added one by one. */
export class Running implements Totals {
  minutes = 0;
  paid = 0;
  cost = 0;
  costWithoutLabour = 0;

  add({ minutes, gross, paid, cost, kind }: Entry): void {
    this.minutes += minutes ?? 0;
    if (paid) this.paid += gross;
    if (!cost) return;
    this.cost += gross;
    if (kind !== 'labour') this.costWithoutLabour += gross;
  }

  /** As they are now; adding more does not change them. */
  soFar(): Totals {
    const { minutes, paid, cost, costWithoutLabour } = this;
    return { minutes, paid, cost, costWithoutLabour };
  }
}

export const NO_TOTALS: Totals = new Running().soFar();

export function totalsOf(entries: Iterable<Entry>): Totals {
  const totals = new Running();
  for (const entry of entries) totals.add(entry);
  return totals.soFar();
}
