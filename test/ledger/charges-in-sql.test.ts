/**
 * What is charged, owed, to buy and deductible, worked out again by an SQL engine (node:sqlite) from the entries as
 * they are downloaded, and equal to the penny.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clientAccount } from '../../src/journal/ledger/client-account.ts';
import { statementOf } from '../../src/journal/ledger/statement.ts';
import { taxStandings } from '../../src/journal/ledger/tax-standing.ts';
import { taxSummary } from '../../src/journal/ledger/tax-summary.ts';
import { toFinish } from '../../src/journal/registers/to-finish.ts';
import { standingKey } from '../../src/journal/values/tax.ts';
import { recordOf } from '../arbitraries/compiled.ts';
import { filesOf, rawJournal } from '../arbitraries/raw-journal.ts';
import { asked, entriesInSql } from './entries-in-sql.ts';

/** Half away from zero of a figure in hundredths of a hundredth. */
const ROUNDED = (of: string) => `(sign(${of}) * ((abs(${of}) + 5000) / 10000))`;

describe('of random journals', () => {
  const registered = (files: Record<string, string>): Record<string, string> => ({
    ...files,
    'journal.yaml': `${files['journal.yaml']}workshop: { name: W, tax-number: GB 000, tax: 17.5% }\n`,
  });

  test('a workshop that is registered charges net, mark-up on the net, and tax on both, rounded at each entry', () => {
    fc.assert(
      fc.property(rawJournal(10), (raw) => {
        const record = recordOf(registered(filesOf(raw)));
        const db = entriesInSql(record);
        const rates = [...record.journal.settings.markUp].map(([kind, rate]) => `when '${kind}' then ${rate.mul(100).toString()}`);
        const marked = ROUNDED(`net * (case kind ${rates.join(' ')} else 0 end) * 100`);
        const lines = `select kind, net, gross, ${marked} marked from entries where cost and charged`;
        const taxed = `select net, marked, iif(kind = 'sale', gross - net, ${ROUNDED('(net + marked) * 1750')}) tax from (${lines})`;
        const { sum } = statementOf(record, '2030-01-01', record.day);
        expect([[sum.net, sum.markUp, sum.tax, sum.charged].join(' ')]).toEqual(
          asked(
            db,
            `select ${['net', 'marked', 'tax', 'net + marked + tax'].map((each) => `coalesce(cast(sum(${each}) as integer), 0)`)} from (${taxed})`,
          ),
        );
        expect(clientAccount(record, record.day)).toMatchObject({ open: sum.charged, owed: sum.charged });
        db.close();
      }),
      { numRuns: 25 },
    );
  });

  test('how money stands to tax', () => {
    fc.assert(
      fc.property(rawJournal(10), (raw) => {
        const record = recordOf(filesOf(raw));
        const db = entriesInSql(record);
        const rows = taxStandings(record.ledger.entries).map(({ sum, ...row }) =>
          [standingKey(row), sum.net, sum.tax, sum.gross].join(' '),
        );
        const fractions = "case rate when '0' then '0' when '0.05' then '1/20' when '0.2' then '1/5' else standing end";
        expect(rows.toSorted()).toEqual(asked(db, `select ${fractions}, sum(net), sum(tax), sum(gross) from entries group by 1`));
        db.close();
      }),
      { numRuns: 25 },
    );
  });

  test('the tax of what was paid and of what was sold, neither set against the other', () => {
    fc.assert(
      fc.property(rawJournal(10), (raw) => {
        const record = recordOf(filesOf(raw));
        const db = entriesInSql(record);
        const { paid, sold } = taxSummary(record, record.day);
        const line =
          (kind: string) =>
          ({ sum, ...row }: (typeof paid)[number]) =>
            [kind, standingKey(row), sum.net, sum.tax, sum.gross].join(' ');
        const fractions = "case rate when '0' then '0' when '0.05' then '1/20' when '0.2' then '1/5' else standing end";
        expect([...paid.map(line('0')), ...sold.map(line('1'))].toSorted()).toEqual(
          asked(db, `select kind = 'sale', ${fractions}, sum(net), sum(tax), sum(gross) from entries where paid group by 1, 2`),
        );
        db.close();
      }),
      { numRuns: 25 },
    );
  });

  test('what a subsystem will have cost, with nothing open, is what it has cost', () => {
    fc.assert(
      fc.property(rawJournal(10), (raw) => {
        const record = recordOf(filesOf(raw));
        const db = entriesInSql(record);
        const rows = toFinish(record, null).filter(({ willHaveCost }) => willHaveCost !== 0);
        expect(rows.map(({ subsystem, willHaveCost }) => `${subsystem.id} ${willHaveCost}`).toSorted()).toEqual(
          asked(db, 'select * from (select subsystem, sum(gross) g from entries where cost group by 1) where g <> 0'),
        );
        db.close();
      }),
      { numRuns: 25 },
    );
  });
});
