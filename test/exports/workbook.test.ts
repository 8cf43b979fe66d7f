import { read } from '@e965/xlsx';
import { expect, test } from 'vitest';
import { entriesTable } from '../../src/exports/entries.ts';
import { stockTable } from '../../src/exports/stock.ts';
import type { Table } from '../../src/exports/table.ts';
import { workbookOf } from '../../src/exports/workbook.ts';
import { recordOf } from '../arbitraries/compiled.ts';
import { filesOf } from '../arbitraries/raw-journal.ts';

const TABLE: Table = {
  name: 'entries',
  columns: ['date', 'what', 'minutes', 'gross', 'none'],
  rows: [
    [{ day: '2031-03-12' }, '=1+1', 90, { decimal: '-1234.50' }, null],
    [{ day: '1999-12-31' }, 'Ash <frame> & "panels" ✓', 0, { decimal: '0.10' }, ''],
  ],
};

// Independent reader: @e965/xlsx, which shares no code with the writer.
async function readBack(tables: readonly Table[]) {
  return read(await workbookOf(tables), { cellDates: true, cellNF: true, cellFormula: true, UTC: true });
}

test('cells come back with their types and values from another reader', async () => {
  const sheet = (await readBack([TABLE])).Sheets.entries ?? {};
  const cell = (at: string) => ({ type: sheet[at]?.t, value: sheet[at]?.v, format: sheet[at]?.z });
  expect(cell('A1')).toMatchObject({ type: 's', value: 'date' });
  expect(cell('A2').type).toBe('d');
  expect((cell('A2').value as Date).toISOString()).toBe('2031-03-12T00:00:00.000Z');
  expect((cell('A3').value as Date).toISOString()).toBe('1999-12-31T00:00:00.000Z');
  expect(cell('C2')).toMatchObject({ type: 'n', value: 90 });
  expect(cell('D2')).toMatchObject({ type: 'n', value: -1234.5, format: '0.00' });
  expect(cell('D3')).toMatchObject({ type: 'n', value: 0.1, format: '0.00' });
  expect(cell('B3')).toMatchObject({ type: 's', value: 'Ash <frame> & "panels" ✓' });
  expect(sheet.E2).toBeUndefined();
});

test('text that begins like a formula is text, and is not run', async () => {
  const cell = (await readBack([TABLE])).Sheets.entries?.B2;
  expect(cell).toMatchObject({ t: 's', v: '=1+1' });
  expect(cell?.f).toBeUndefined();
});

test('a sheet for each table, every line there', async () => {
  const stock = { bought: [{ ml: 500, pence: 377 }], used: [{ on: 'drum', perMille: 100 }], countedPerMille: null };
  const sessions = [{ day: 3, hours: [], lines: [], sold: [], stock }];
  const record = recordOf(filesOf({ method: 'fifo', opening: { ml: 100, pence: 99 }, sessions }));
  const book = await readBack([entriesTable(record, null), stockTable(record, null)]);
  expect(book.SheetNames).toEqual(['entries', 'stock']);
  expect(book.Sheets.entries?.['!ref']).toBe('A1:X3');
  expect(book.Sheets.stock?.C2).toMatchObject({ t: 'n', v: 0.6 });
});

test('the same tables make the same bytes', async () => {
  const first = await workbookOf([TABLE]);
  // A zip counts time in steps of two seconds.
  await new Promise((done) => setTimeout(done, 2100));
  expect(Buffer.from(await workbookOf([TABLE])).equals(Buffer.from(first))).toBe(true);
});
