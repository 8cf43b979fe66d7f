/** A statement in tables of a page: as it was sent, or would be. */
import { type DocumentTable, statementDocument } from '../../../exports/statement-document.ts';
import type { Statement } from '../../../journal/ledger/statement.ts';
import { linked } from '../page/links.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { type Column, rows, type SetTable, setTable } from '../tables/table.ts';

export interface StatementSection {
  readonly id: string;
  readonly title: string;
  readonly table: SetTable;
}

export interface StatementOnPage {
  readonly title: string;
  readonly head: readonly { readonly name: string; readonly words: string }[];
  readonly sections: readonly StatementSection[];
  readonly notes: readonly string[];
}

export function statementOnPage(sheet: RecordSheet, statement: Statement): StatementOnPage {
  const { title, head, tables, notes } = statementDocument(statement, sheet.record.journal);
  return { title, head, notes, sections: tables.map((table) => ({ id: table.id, title: table.title, table: tableOf(sheet, table) })) };
}

interface Row {
  readonly cells: readonly string[];
  /** The note that tells of it, where it still does. */
  readonly note: string | null;
}

function tableOf(sheet: RecordSheet, { title, columns, rows: list, entries, foot }: DocumentTable): SetTable {
  const known = sheet.index.sessions;
  const noteOf = (entry: string | undefined): string | null => {
    const session = entry?.slice(0, entry.indexOf('#')) ?? '';
    return known.has(session) ? sheet.toSession(session) : null;
  };
  const first = columns.findIndex(({ side }) => side === 'text');
  return setTable<Row, readonly string[]>({
    label: title,
    set: entries === undefined ? 'account totals' : 'account statement-lines',
    keepsRows: entries === undefined && columns.length < 4,
    columns: columns.map(
      ({ name, side }, n): Column<Row, readonly string[]> => ({
        head: name === '' ? title : name,
        ...(side === 'text' ? {} : { set: side === 'figure' ? 'num' : 'date' }),
        names: n === first && entries === undefined,
        bare: side !== 'figure',
        cell: ({ cells, note }) => (side === 'date' ? linked(cells[n] ?? '', note) : cells[n]),
        ...(side === 'figure' ? { sum: (cells: readonly string[]) => cells[n] } : {}),
      }),
    ),
    groups: rows<Row, readonly string[]>(list.map((cells, n) => ({ cells, note: noteOf(entries?.[n]) }))),
    foot: foot === null ? [] : [{ words: foot.find((words) => words !== '') ?? '', sum: foot }],
  });
}
