import type Fraction from 'fraction.js';
import type { Entry } from '../record.ts';
import { standingKey, type TaxStanding } from '../values/tax.ts';
import { type Sum, sumBy } from './sums.ts';

/** What was paid by how it stands to tax: each rate, 0 % too, what is exempt, what says nothing, and what was bought at several. */
export interface StandingRow {
  readonly standing: TaxStanding;
  /** Null unless rated. */
  readonly rate: Fraction | null;
  readonly sum: Sum;
}

const STANDINGS: readonly TaxStanding[] = ['rated', 'exempt', 'several', 'unsaid'];

/** Every entry in one of the rows, the highest rate first; together they are all of it. */
export function taxStandings(entries: readonly Entry[]): StandingRow[] {
  const sums = sumBy(entries, ({ standing, taxRate: rate }) => standingKey({ standing, rate }));
  const rows = [...sums.values()].map((sum): StandingRow => {
    const { standing = 'unsaid', taxRate: rate = null } = sum.entries[0] ?? {};
    return { standing, rate, sum };
  });
  return rows.sort((a, b) => STANDINGS.indexOf(a.standing) - STANDINGS.indexOf(b.standing) || (b.rate?.compare(a.rate ?? 0) ?? 0));
}
