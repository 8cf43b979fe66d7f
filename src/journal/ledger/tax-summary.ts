/** The tax in the books, each kind by itself: what was paid, what was sold, what the client is charged. Nothing is set against anything. */

import { sentBy } from '../model/sent-by.ts';
import type { IsoDate } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { closedStatement, linesOf, openStatement, type TaxAtRate, taxesAtRates } from './statement.ts';
import { viewAt } from './sums.ts';
import { type StandingRow, taxStandings } from './tax-standing.ts';

export interface TaxSummary {
  /** What went out, less what came back of it. */
  readonly paid: readonly StandingRow[];
  /** Sales, negative. */
  readonly sold: readonly StandingRow[];
  /** On statements that were sent, and since; empty where the workshop charges no tax. */
  readonly charged: readonly TaxAtRate[];
}

export function taxSummary(books: Pick<JournalRecord, 'journal' | 'ledger'>, at: IsoDate): TaxSummary {
  const entries = viewAt(books, 'paid', at);
  const sent = sentBy(books.journal, at).map((frozen) => closedStatement(frozen, books));
  const lines = [...sent, openStatement(books, at)].flatMap(linesOf).filter(({ notCharged }) => notCharged === null);
  return {
    paid: taxStandings(entries.filter(({ kind }) => kind !== 'sale')),
    sold: taxStandings(entries.filter(({ kind }) => kind === 'sale')),
    charged: taxesAtRates(lines).filter(({ sold }) => !sold),
  };
}
