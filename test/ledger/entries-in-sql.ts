/** The downloaded table of entries in a database: what a reader has who trusts no program of ours. */
import { DatabaseSync } from 'node:sqlite';
import { parse } from 'csv-parse/sync';
import { billsTable } from '../../src/exports/bills.ts';
import { tableToCsv } from '../../src/exports/csv.ts';
import { entriesTable } from '../../src/exports/entries.ts';
import type { JournalRecord } from '../../src/journal/record.ts';

/** Tables `entries`, its money in whole pence, and `bills` with their sellers. */
export function entriesInSql(record: JournalRecord): DatabaseSync {
  const db = new DatabaseSync(':memory:');
  db.exec(`create table entries (id text, date text, session text, subsystem text, position text, person text, kind text,
    minutes integer, net integer, tax integer, gross integer, paid integer, cost integer, charged integer, rate text, standing text,
    part text, bill text)`);
  db.exec('create table bills (bill text, seller text)');
  const insert = db.prepare('insert into entries values (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)');
  const rows: Record<string, string>[] = parse(tableToCsv(entriesTable(record, null)), { bom: true, columns: true });
  const textIn = (text: string | undefined) => (text === '' || text === undefined ? null : text);
  for (const row of rows) {
    const names = ['entry', 'date', 'session', 'subsystem', 'position', 'person', 'kind'].map((name) => textIn(row[name]));
    const amounts = ['net', 'tax', 'gross'].map((name) => penceIn(row[name] ?? ''));
    const minutes = row.minutes === '' ? null : Number(row.minutes);
    insert.run(
      ...names,
      minutes,
      ...amounts,
      row.paid === 'yes' ? 1 : 0,
      row.cost === 'yes' ? 1 : 0,
      row['not-charged'] === '' ? 1 : 0,
      row['tax-rate'] ?? '',
      row['tax-standing'] ?? '',
      textIn(row.part),
      textIn(row.bill),
    );
  }
  const bills: Record<string, string>[] = parse(tableToCsv(billsTable(record, null)), { bom: true, columns: true });
  const seller = db.prepare('insert into bills values (?, ?)');
  for (const [bill, from] of new Map(bills.map((row) => [row.bill ?? '', textIn(row.from)]))) seller.run(bill, from);
  return db;
}

/** `-12.50` is -1250: by its digits, not by a float. */
function penceIn(decimal: string): number {
  return Number(decimal.replace('.', ''));
}

/** The rows of a query as text, each value after the other. */
export function asked(db: DatabaseSync, sql: string): string[] {
  return db
    .prepare(sql)
    .all()
    .map((row) => Object.values(row).join(' '))
    .toSorted();
}
