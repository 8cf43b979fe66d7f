/**
 * Every total of the demo and of random journals added up again by an SQL engine (node:sqlite) from the
 * entries as they are downloaded, and equal to the penny.
 */
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { budgets } from '../../src/journal/ledger/budgets.ts';
import { subsystemByMonth } from '../../src/journal/ledger/by-month.ts';
import { clientAccount, openDues } from '../../src/journal/ledger/client-account.ts';
import { ledgerSeries } from '../../src/journal/ledger/ledger-at.ts';
import { costByDecision, positionTotals } from '../../src/journal/ledger/of-position.ts';
import { budgetedSpend, hoursByWeek } from '../../src/journal/ledger/over-time.ts';
import { statementOf } from '../../src/journal/ledger/statement.ts';
import type { Totals } from '../../src/journal/ledger/totals.ts';
import { compileJournal } from '../../src/journal/pipeline.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { quotedWork } from '../../src/journal/registers/quoted.ts';
import { viewDates } from '../../src/journal/registers/view-dates.ts';
import { loadJournal } from '../../src/load/load.ts';
import { recordOf } from '../arbitraries/compiled.ts';
import { filesOf, rawJournal } from '../arbitraries/raw-journal.ts';
import { asked, entriesInSql } from './entries-in-sql.ts';

const DEMO = compileJournal(loadJournal(fileURLToPath(new URL('../../content', import.meta.url))), { today: '2026-11-25' }).record;

const SUM = (what: string) => `coalesce(sum(${what}), 0)`;
const SUMS = [SUM('minutes'), SUM('paid * gross'), SUM('cost * gross'), SUM("cost * (kind <> 'labour') * gross")].join(', ');
const inWords = ([key, { minutes, paid, cost, costWithoutLabour }]: readonly [string, Totals]): string =>
  [key, minutes, paid, cost, costWithoutLabour].join(' ');
const sorted = (lines: Iterable<string>): string[] => [...lines].toSorted();

/** Each total of a record beside the query that makes it. */
const TOTALS: Readonly<Record<string, (record: JournalRecord, db: ReturnType<typeof entriesInSql>) => void>> = {
  'net and tax are gross in every entry': (_, db) => {
    expect(asked(db, 'select id from entries where net + tax <> gross')).toEqual([]);
  },

  'subsystem by month, both views, and their totals both ways': (record, db) => {
    for (const view of ['paid', 'cost'] as const) {
      const { rows, totals, total } = subsystemByMonth(record, view, null);
      const line = (key: string, { minutes, net, tax, gross }: typeof total) => [key, minutes, net, tax, gross].join(' ');
      const figures = ['minutes', 'net', 'tax', 'gross'].map(SUM).join(', ');
      const cells = rows.flatMap(({ subsystem, months }) => [...months].map(([month, sum]) => line(`${subsystem} ${month}`, sum)));
      expect(sorted(cells)).toEqual(asked(db, `select subsystem, substr(date, 1, 7), ${figures} from entries where ${view} group by 1, 2`));
      const ofRows = rows.filter((row) => row.total.entries.length > 0).map((row) => line(row.subsystem, row.total));
      expect(sorted(ofRows)).toEqual(asked(db, `select subsystem, ${figures} from entries where ${view} group by 1`));
      const ofMonths = [...totals].map(([month, sum]) => line(month, sum));
      expect(sorted(ofMonths)).toEqual(asked(db, `select substr(date, 1, 7), ${figures} from entries where ${view} group by 1`));
      expect([line('all', total)]).toEqual(asked(db, `select 'all', ${figures} from entries where ${view}`));
    }
  },

  'the whole, by subsystem, kind and person, on every day the ledger is shown at': (record, db) => {
    const dates = viewDates(record).map(({ date }) => date);
    for (const at of ledgerSeries(record, dates)) {
      const until = `from entries where date <= '${at.date}'`;
      const by = (column: string) => asked(db, `select ${column}, ${SUMS} ${until} and ${column} is not null group by 1`);
      expect(sorted([...at.bySubsystem].map(inWords))).toEqual(by('subsystem'));
      expect(sorted([...at.byKind].map(inWords))).toEqual(by('kind'));
      expect(sorted([...at.byPerson].map(inWords))).toEqual(by('person'));
      expect([inWords(['all', at.whole])]).toEqual(asked(db, `select 'all', ${SUMS} ${until}`));
    }
  },

  'what each position took, and by decision': (record, db) => {
    const taken = positionTotals(record).map(({ position, totals: { minutes, cost } }) => `${position.id} ${minutes} ${cost}`);
    const query = 'select position, sum(coalesce(minutes, 0)), sum(gross) from entries where cost and position is not null group by 1';
    expect(sorted(taken)).toEqual(asked(db, query));
    const parted = [...record.journal.positions.keys()].flatMap((id) => {
      const parts = costByDecision(record, id, null).filter(({ sum }) => sum.entries.length > 0);
      const add = (figure: 'minutes' | 'gross') => parts.reduce((all, { sum }) => all + sum[figure], 0);
      return parts.length === 0 ? [] : [`${id} ${add('minutes')} ${add('gross')}`];
    });
    expect(sorted(parted)).toEqual(asked(db, query));
  },

  'hours by week, from Monday': (record, db) => {
    const weeks = hoursByWeek(record, null).filter(({ sum }) => sum.entries.length > 0);
    expect(sorted(weeks.map(({ monday, sum }) => `${monday} ${sum.minutes}`))).toEqual(
      asked(db, `select date(date, '-6 days', 'weekday 1'), sum(minutes) from entries where kind = 'labour' group by 1`),
    );
  },

  'what budgets are held against, and its running sum': (record, db) => {
    const [last] = ledgerSeries(record, [record.day]);
    if (!last) throw new Error('no ledger of today');
    const used = budgets(record.journal, last).filter(({ worked, spent }) => worked !== 0 || spent !== 0);
    expect(sorted(used.map(({ subsystem, worked, spent }) => `${subsystem.id} ${worked} ${spent}`))).toEqual(
      asked(
        db,
        `select * from (select subsystem, sum(coalesce(minutes, 0)) m, sum(cost * (kind <> 'labour') * gross) g from entries group by 1) where m <> 0 or g <> 0`,
      ),
    );
    const held = [...record.journal.subsystems.values()].filter((one) => one.budgetMoney !== null).map(({ id }) => `'${id}'`);
    const months = budgetedSpend(record)?.months.filter(({ added }) => added !== 0) ?? [];
    const monthly = `select substr(date, 1, 7) month, sum(gross) added from entries where cost and kind <> 'labour' and subsystem in (${held}) group by 1`;
    expect(sorted(months.map(({ month, added, together }) => `${month} ${added} ${together}`))).toEqual(
      asked(db, `select * from (select month, added, sum(added) over (order by month) from (${monthly})) where added <> 0`),
    );
  },

  'a statement of some months: cost, mark-up on the net rounded at each entry': (record, db) => {
    const [from, to] = ['2025-02-10', '2031-06-20'];
    const { groups, sum } = statementOf(record, from, to);
    const rates = [...record.journal.settings.markUp].map(([kind, rate]) => `when '${kind}' then ${rate.mul(100).toString()}`);
    const rate = rates.length === 0 ? '0' : `case kind ${rates.join(' ')} else 0 end`;
    const marked = `sign(net) * ((2 * abs(net) * (${rate}) + 100) / 200)`;
    const figures = [
      SUM('minutes'),
      SUM('gross'),
      `cast(${SUM(marked)} as integer)`,
      `${SUM('gross')} + cast(${SUM(marked)} as integer)`,
    ].join(', ');
    // What a statement that was closed lists is on no other; what is of its time and on none is late, and on the next.
    const { statements } = record.journal;
    const stated = statements.flatMap(({ lines }) => lines.map(({ entry }) => `'${entry}'`));
    const days = `(date between '${from}' and '${to}' or date <= '${statements.at(-1)?.to ?? ''}')`;
    const query = (key: string, group: string) =>
      `select ${key}, ${figures} from entries where cost and charged and ${days} and id not in (${stated}) ${group}`;
    const line = (key: string, { minutes, cost, markUp, charged }: typeof sum) => [key, minutes, cost, markUp, charged].join(' ');
    expect(sorted(groups.map(({ kind, sum: of }) => line(kind, of)))).toEqual(asked(db, query('kind', 'group by 1')));
    expect([line('all', sum)]).toEqual(asked(db, query("'all'", '')));
  },
};

/** The demo alone has statements that were sent, and work that was quoted for. */
test('the account with the client, and what was billed of what was quoted', () => {
  if (!DEMO) throw new Error('the demo was not understood');
  const db = entriesInSql(DEMO);
  const { journal, ledger, day } = DEMO;
  const lines = journal.statements.flatMap(({ lines: of }) => of);
  const rates = [...journal.settings.markUp].map(([kind, rate]) => `when '${kind}' then ${rate.mul(100).toString()}`);
  const marked = `sign(net) * ((2 * abs(net) * (case kind ${rates.join(' ')} else 0 end) + 100) / 200)`;
  const open = `select cast(sum(gross + ${marked}) as integer) from entries where cost and charged and id not in (${lines.map(({ entry }) => `'${entry}'`)})`;
  const account = clientAccount(DEMO, day);
  expect([String(account.open)]).toEqual(asked(db, open));
  expect(account.stated).toBe(lines.reduce((sum, { charged }) => sum + charged, 0));
  expect(account.owed).toBe(account.stated + account.open - ledger.received.reduce((sum, { amount }) => sum + amount, 0));
  expect(openDues(DEMO, day).reduce((sum, { left }) => sum + left, 0)).toBe(account.owed);
  const works = quotedWork(DEMO, null);
  expect(works.length).toBeGreaterThan(1);
  for (const { on, firm, date, billed } of works) {
    const of = `kind = 'outside-work' and part = '${on.part}' and lower(seller) = lower('${firm}') and date >= '${date}'`;
    expect([`${billed.net} ${billed.tax} ${billed.gross}`]).toEqual(
      asked(db, `select ${['net', 'tax', 'gross'].map(SUM)} from entries join bills using (bill) where ${of}`),
    );
  }
  db.close();
});

describe.each(Object.entries(TOTALS))('%s', (_, agrees) => {
  test('of the demo', () => {
    if (!DEMO) throw new Error('the demo was not understood');
    expect(DEMO.ledger.entries.length).toBeGreaterThan(200);
    const db = entriesInSql(DEMO);
    agrees(DEMO, db);
    db.close();
  });

  test('of random journals', () => {
    fc.assert(
      fc.property(rawJournal(12), (raw) => {
        const record = recordOf(filesOf(raw));
        const db = entriesInSql(record);
        agrees(record, db);
        db.close();
      }),
      { numRuns: 20 },
    );
  });
});
