import type Fraction from 'fraction.js';
import type { PaidAtTax } from '../model.ts';
import type { Entry } from '../record.ts';
import { standingKey, TAX_STANDINGS, type TaxStanding } from '../values/tax.ts';
import { type Sum, sumBy } from './sums.ts';

/** What was paid by how it stands to tax: each rate, 0 % too, what is exempt, what says nothing, and what was bought at several. */
export interface StandingRow {
  readonly standing: TaxStanding;
  /** Null unless rated. */
  readonly rate: Fraction | null;
  readonly sum: Sum;
}

/** Every entry in one of the rows, the highest rate first; together they are all of it. */
export function taxStandings(entries: readonly Entry[]): StandingRow[] {
  const sums = sumBy(entries, ({ standing, taxRate: rate }) => standingKey({ standing, rate }));
  const rows = [...sums.values()].map((sum): StandingRow => {
    const { standing = 'unsaid', taxRate: rate = null } = sum.entries[0] ?? {};
    return { standing, rate, sum };
  });
  return rows.sort((a, b) => TAX_STANDINGS.indexOf(a.standing) - TAX_STANDINGS.indexOf(b.standing) || (b.rate?.compare(a.rate ?? 0) ?? 0));
}

/**
 * What went out for the job, by how it stands to tax, and after it what was sold: a sale is tax to be paid on, and lowers
 * nothing that was paid. The workshop's own labour was bought from nobody.
 */
export function paidAtTax(entries: readonly Entry[]): PaidAtTax[] {
  const bought = entries.filter(({ kind }) => kind !== 'labour' && kind !== 'sale');
  const sales = entries.filter(({ kind }) => kind === 'sale');
  return [bought, sales].flatMap((of) =>
    taxStandings(of).map(({ standing, rate, sum: { net, tax, gross } }) => ({ standing, rate, net, tax, gross, sold: of === sales })),
  );
}
