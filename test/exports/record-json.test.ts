/** The record as one document holds what the pages were made from. */
import { expect, test } from 'vitest';
import { frozenStatement } from '../../src/exports/frozen-statement.ts';
import { recordJson } from '../../src/exports/record-json.ts';
import { asSent, statementOf } from '../../src/journal/ledger/statement.ts';
import { hours, journalWith, type NoteOf } from '../ledger/small-journal.ts';

test('what was sent to the client is in it, each line with the entry that it charged', () => {
  const note: NoteOf = ['2031-03-12', hours('jm', '1h')];
  const { record: open } = journalWith({}, note);
  const sent = frozenStatement(asSent(statementOf(open, '2030-09-14', '2031-03-31'), 1, open), open.journal.settings);
  const { statements, entries, deeds } = recordJson(journalWith({ statements: [sent] }, note).record);
  expect(statements).toMatchObject([
    { number: 1, to: '2031-03-31', charged: 2800, lines: [{ entry: '2031-03-12-0#hours-1', cost: 2800 }] },
  ]);
  expect(entries).toMatchObject([{ id: '2031-03-12-0#hours-1' }]);
  expect(deeds).toEqual([]);
});
