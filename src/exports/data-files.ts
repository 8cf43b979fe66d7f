/** The files under data/: what each is called and how it is made from the record. */
import { hasClient } from '../journal/ledger/client-account.ts';
import { closedStatement, openStatement, type Statement } from '../journal/ledger/statement.ts';
import { sentBy } from '../journal/model/sent-by.ts';
import type { JournalRecord } from '../journal/record.ts';
import { keptIn } from '../journal/values/once.ts';
import { asCopyHas, tells } from './as-copy-has.ts';
import { billsTable } from './bills.ts';
import { tableToCsv } from './csv.ts';
import { entriesTable } from './entries.ts';
import { hoursTable } from './hours.ts';
import { linkedData } from './linked-data.ts';
import { openItemsCsv } from './open-items.ts';
import { registerCsv } from './register.ts';
import { statementTable } from './statement.ts';
import { stockTable } from './stock.ts';
import type { Table } from './table.ts';
import { whereaboutsCsv } from './whereabouts.ts';
import { workbookApart } from './workbook-apart.ts';

export interface DataFile {
  /** From the root of the site. */
  readonly path: string;
  /** What it holds, in a few words. */
  readonly holds: string;
  /** It is of that alone, and a record that tells of none does without it. */
  readonly of?: 'money' | 'hours';
  /** Of a long record it is made in a thread of its own, so that other things can be done meanwhile. */
  readonly isMadeApart?: boolean;
  make(record: JournalRecord): string | Promise<Uint8Array>;
}

/** A table of the whole record, as the copy has it. A file of its own and the workbook are made of one. */
function shown(table: TableOf, record: JournalRecord): Table {
  const made = keptIn(tables, record, () => new Map<TableOf, Table>());
  return keptIn(made, table, () => asCopyHas(table(record, null), record));
}

type TableOf = (record: JournalRecord, at: null) => Table;
const tables = new WeakMap<JournalRecord, Map<TableOf, Table>>();

/** The sheets of the workbook. */
const SHEETS: readonly (Pick<DataFile, 'of'> & { readonly table: TableOf })[] = [
  { table: entriesTable },
  { table: billsTable, of: 'money' },
  { table: stockTable },
  { table: hoursTable, of: 'hours' },
];

const isOf = (record: JournalRecord, of: DataFile['of']): boolean => of === undefined || tells(record, of);

export const DATA_FILES: readonly DataFile[] = [
  { path: 'data/register.csv', holds: 'the register, one row for each position', make: (record) => registerCsv(record) },
  { path: 'data/whereabouts.csv', holds: 'where every part is, one row for each part and place', make: (record) => whereaboutsCsv(record) },
  { path: 'data/open-items.csv', holds: 'open items, one row for each item', make: (record) => openItemsCsv(record) },
  { path: 'data/entries.csv', holds: 'the ledger, one row for each entry', make: (record) => tableToCsv(shown(entriesTable, record)) },
  { path: 'data/bills.csv', of: 'money', holds: 'bills, one row for each line', make: (record) => tableToCsv(shown(billsTable, record)) },
  { path: 'data/stock.csv', holds: 'consumables, one row for each', make: (record) => tableToCsv(shown(stockTable, record)) },
  { path: 'data/hours.csv', of: 'hours', holds: 'hours, one row for each entry', make: (record) => tableToCsv(shown(hoursTable, record)) },
  {
    path: 'data/record.jsonld',
    holds: 'the record as linked data: JSON-LD in terms of CIDOC CRM',
    make: (record) => `${JSON.stringify(linkedData(record), null, 1)}\n`,
  },
  {
    path: 'data/ledger.xlsx',
    holds: 'the tables of the ledger as one workbook',
    isMadeApart: true,
    make: (record) => workbookApart(SHEETS.filter(({ of }) => isOf(record, of)).map(({ table }) => shown(table, record))),
  },
];

/** The files that a record has. */
export function dataFilesOf(record: JournalRecord): readonly DataFile[] {
  const files = DATA_FILES.filter(({ of }) => isOf(record, of));
  return hasClient(record) ? [...files, ...statementFiles(record)] : files;
}

/** What the client is sent: a file for each statement, and one of what is on none yet. */
function statementFiles({ journal, day }: JournalRecord): DataFile[] {
  const sent = sentBy(journal, day);
  const file = (name: string, holds: string, statement: (record: JournalRecord) => Statement): DataFile => ({
    path: `data/statement-${name}.csv`,
    holds,
    of: 'money',
    make: (record) => tableToCsv(asCopyHas(statementTable(statement(record), record.journal.settings), record)),
  });
  return [
    ...sent.map((frozen) =>
      file(String(frozen.number), `statement ${frozen.number} to the client`, (record) => closedStatement(frozen, record)),
    ),
    file('since', 'what is charged and on no statement yet', (record) => openStatement(record, record.day)),
  ];
}
