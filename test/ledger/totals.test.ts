/**
 * Every total reckoned a second time by an SQL engine (node:sqlite), from the whole numbers that the
 * notes were written from, and compared to the penny.
 */
import { DatabaseSync } from 'node:sqlite';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { subsystemByMonth } from '../../src/journal/ledger/by-month.ts';
import { type LedgerAt, ledgerAt, ledgerSeries } from '../../src/journal/ledger/ledger-at.ts';
import { reconcile } from '../../src/journal/ledger/reconcile.ts';
import { stockAt } from '../../src/journal/ledger/stock-at.ts';
import { sumBy, sumOf, type View, viewAt } from '../../src/journal/ledger/sums.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { recordOf } from '../arbitraries/compiled.ts';
import { dateOf, filesOf, RATES, type RawJournal, rawJournal } from '../arbitraries/raw-journal.ts';

const SUBSYSTEM_OF: Readonly<Record<string, string>> = { drum: 'brakes', studs: 'frame' };

/** Raw pence and minutes in tables; rounding is written in integers, half away from zero. */
function database(raw: RawJournal): DatabaseSync {
  const db = new DatabaseSync(':memory:');
  db.exec(`
    create table hours (date text, by text, subsystem text, minutes integer, rate integer);
    create table lines (date text, kind text, subsystem text, pence integer, tax integer, on_top integer);
    create table sold (date text, subsystem text, pence integer);
    create table shelf (date text, pence integer);
    create view labour as select *, (2 * minutes * rate + 60) / 120 as pence from hours;
    create view taxed as select *, sign(pence) * case
      when on_top then (2 * abs(pence) * tax + 100) / 200
      else (2 * abs(pence) * tax + 100 + tax) / (2 * (100 + tax)) end as taxed from lines;
    create view paid_lines as select date, kind, subsystem, taxed, case when on_top then pence + taxed else pence end as gross from taxed;
  `);
  const hours = db.prepare('insert into hours values (?, ?, ?, ?, ?)');
  const lines = db.prepare('insert into lines values (?, ?, ?, ?, ?, ?)');
  const sold = db.prepare('insert into sold values (?, ?, ?)');
  const shelf = db.prepare('insert into shelf values (?, ?)');
  for (const each of raw.sessions) {
    const date = dateOf(each.day);
    for (const one of each.hours) {
      const rate = RATES[one.by].findLast((step) => step.from <= each.day)?.pence ?? 0;
      hours.run(date, one.by, SUBSYSTEM_OF[one.on] ?? one.on, one.minutes, one.unpaid ? 0 : rate);
    }
    for (const one of each.lines) {
      lines.run(
        date,
        one.as,
        SUBSYSTEM_OF[one.for] ?? one.for,
        one.refund ? -one.pence : one.pence,
        one.tax,
        one.onTop && one.tax > 0 ? 1 : 0,
      );
    }
    for (const one of each.sold) sold.run(date, one.on, one.pence);
    for (const one of each.stock.bought) shelf.run(date, one.pence);
  }
  return db;
}

function rows(db: DatabaseSync, sql: string): Record<string, number> {
  return Object.fromEntries(
    db
      .prepare(sql)
      .all()
      .map((row) => [String(row.k), Number(row.v)]),
  );
}

function sums(
  record: JournalRecord,
  view: View,
  key: (entry: JournalRecord['ledger']['entries'][number]) => string | null,
  figure: 'gross' | 'tax' | 'minutes' = 'gross',
) {
  return Object.fromEntries([...sumBy(viewAt(record, view, null), key)].map(([k, sum]) => [k, sum[figure]]));
}

const RUNS = { numRuns: 40 };

test('what was paid and what the job cost, by subsystem, kind, person and month, is what SQL makes of the raw figures', () => {
  fc.assert(
    fc.property(rawJournal(12), (raw) => {
      const record = recordOf(filesOf(raw));
      const db = database(raw);
      const spent = `select date, kind, subsystem, gross from paid_lines union all select date, 'sale', subsystem, -pence from sold`;
      expect(sums(record, 'paid', (entry) => entry.kind)).toEqual(
        rows(db, `select kind k, sum(gross) v from (${spent} union all select date, 'consumable', 'general', pence from shelf) group by 1`),
      );
      expect(sums(record, 'paid', (entry) => entry.date.slice(0, 7))).toEqual(
        rows(
          db,
          `select substr(date, 1, 7) k, sum(gross) v from (${spent} union all select date, 'consumable', 'general', pence from shelf) group by 1`,
        ),
      );
      const onJob = (entry: { kind: string; subsystem: string }) => (entry.kind === 'consumable' ? null : entry.subsystem);
      expect(sums(record, 'cost', onJob)).toEqual(
        rows(
          db,
          `select subsystem k, sum(gross) v from (${spent} union all select date, 'labour', subsystem, pence from labour) group by 1`,
        ),
      );
      expect(sums(record, 'cost', (entry) => entry.person)).toEqual(rows(db, 'select by k, sum(pence) v from labour group by 1'));
      expect(sums(record, 'cost', (entry) => entry.person, 'minutes')).toEqual(
        rows(db, 'select by k, sum(minutes) v from hours group by 1'),
      );
      const bears = (entry: { kind: string }) =>
        entry.kind === 'consumable' || entry.kind === 'sale' || entry.kind === 'labour' ? null : entry.kind;
      expect(sums(record, 'paid', bears, 'tax')).toEqual(rows(db, 'select kind k, sum(taxed) v from paid_lines group by 1'));
      db.close();
    }),
    RUNS,
  );
});

test('the two views meet on every day: paid, labour and opening stock are job cost and shelf', () => {
  fc.assert(
    fc.property(rawJournal(12), fc.integer({ min: 0, max: 420 }), (raw, day) => {
      const record = recordOf(filesOf(raw));
      const db = database(raw);
      for (const at of [null, dateOf(day)]) {
        const until = at === null ? '' : `where date <= '${at}'`;
        const line = reconcile(ledgerAt(record, at ?? record.day));
        expect(line.left).toBe(line.right);
        expect(line.holds).toBe(true);
        const all = (table: string, column: string) =>
          rows(db, `select 'v' k, coalesce(sum(${column}), 0) v from ${table} ${until}`).v ?? 0;
        expect(line.paid).toBe(all('paid_lines', 'gross') + all('shelf', 'pence') - all('sold', 'pence'));
        expect(line.labour).toBe(all('labour', 'pence'));
        expect(line.opening).toBe(raw.opening.pence);
        const used = viewAt(record, 'cost', at).filter((entry) => entry.kind === 'consumable');
        expect(sumOf(used).gross + line.shelf).toBe(raw.opening.pence + all('shelf', 'pence'));
      }
      db.close();
    }),
    RUNS,
  );
});

test('used and left are opening and bought, in quantity and money, to the last drop and penny', () => {
  fc.assert(
    fc.property(rawJournal(15), (raw) => {
      const [row] = stockAt(recordOf(filesOf(raw)), null);
      const bought = raw.sessions.flatMap((each) => each.stock.bought);
      expect(row?.bought.amount.mul(1000).equals(bought.reduce((all, one) => all + one.ml, 0))).toBe(true);
      expect(row?.bought.value).toBe(bought.reduce((all, one) => all + one.pence, 0));
      expect(row?.used.amount.add(row.left.amount).equals(row.opening.amount.add(row.bought.amount))).toBe(true);
      expect((row?.used.value ?? 0) + (row?.left.value ?? 0)).toBe((row?.opening.value ?? 0) + (row?.bought.value ?? 0));
    }),
    RUNS,
  );
});

test('subsystem by month adds up both ways, and each cell to its entries', () => {
  fc.assert(
    fc.property(rawJournal(12), fc.constantFrom<View>('paid', 'cost'), (raw, view) => {
      const record = recordOf(filesOf(raw));
      const { rows: table, totals, total, months } = subsystemByMonth(record, view, null);
      const add = (list: Iterable<number>) => [...list].reduce((a, b) => a + b, 0);
      expect(add(table.map((row) => row.total.gross))).toBe(total.gross);
      expect(add([...totals.values()].map((sum) => sum.gross))).toBe(total.gross);
      expect(total.gross).toBe(sumOf(viewAt(record, view, null)).gross);
      for (const month of months) expect(add(table.map((row) => row.months.get(month)?.gross ?? 0))).toBe(totals.get(month)?.gross ?? 0);
      for (const row of table) {
        expect(add([...row.months.values()].map((sum) => sum.gross))).toBe(row.total.gross);
        for (const cell of row.months.values()) expect(add(cell.entries.map((entry) => entry.net + entry.tax))).toBe(cell.gross);
      }
    }),
    RUNS,
  );
});

/** The evenings up to a day alone: what a restorer would have had then. */
const until = (raw: RawJournal, day: number): JournalRecord =>
  recordOf(filesOf({ ...raw, sessions: raw.sessions.filter((each) => each.day <= day) }));

test('a ledger as at a day is the ledger made from the notes up to that day', () => {
  fc.assert(
    fc.property(rawJournal(10), fc.array(fc.integer({ min: 0, max: 420 }), { minLength: 1, maxLength: 4 }), (raw, some) => {
      const record = recordOf(filesOf(raw));
      // The days of sessions, where a day too few or too many shows, and any others.
      const days = [...new Set([...raw.sessions.map(({ day }) => day), ...some])].toSorted((a, b) => a - b);
      const series = ledgerSeries(record, days.map(dateOf));
      for (const [n, day] of days.entries()) {
        const shorter = until(raw, day);
        for (const view of ['paid', 'cost'] as const)
          expect(sumOf(viewAt(record, view, dateOf(day)))).toEqual(sumOf(viewAt(shorter, view, null)));
        expect(series[n]).toEqual({ ...ledgerAt(shorter, shorter.day), date: dateOf(day) });
      }
    }),
    RUNS,
  );
});

test('the totals of a ledger at a day are the sums of its entries and of its stock', () => {
  fc.assert(
    fc.property(rawJournal(10), fc.integer({ min: 0, max: 420 }), (raw, day) => {
      const record = recordOf(filesOf(raw));
      const at = ledgerAt(record, dateOf(day));
      for (const view of ['paid', 'cost'] as const) {
        const by = (key: (entry: JournalRecord['ledger']['entries'][number]) => string | null) =>
          [...sumBy(viewAt(record, view, dateOf(day)), key)].filter(([, sum]) => sum.gross !== 0).map(([k, sum]) => [k, sum.gross]);
        const of = (totals: LedgerAt['byKind' | 'bySubsystem' | 'byPerson']) =>
          [...totals].filter(([, each]) => each[view] !== 0).map(([k, each]) => [k, each[view]]);
        expect(of(at.bySubsystem).toSorted()).toEqual(by((entry) => entry.subsystem).toSorted());
        expect(of(at.byKind).toSorted()).toEqual(by((entry) => entry.kind).toSorted());
        expect(of(at.byPerson).toSorted()).toEqual(by((entry) => entry.person).toSorted());
      }
      const stock = stockAt(record, dateOf(day)).map(({ opening, left }) => [opening.value, left.value, left.amount.toFraction()]);
      expect(at.shelf.map(({ opening, left }) => [opening, left.value, left.amount.toFraction()])).toEqual(stock);
    }),
    RUNS,
  );
});
