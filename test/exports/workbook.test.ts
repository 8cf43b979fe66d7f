import { read } from '@e965/xlsx';
import { strFromU8, unzipSync } from 'fflate';
import { expect, test } from 'vitest';
import { entriesTable } from '../../src/exports/entries.ts';
import { stockTable } from '../../src/exports/stock.ts';
import type { Table } from '../../src/exports/table.ts';
import { workbookOf } from '../../src/exports/workbook.ts';
import { workbookApart } from '../../src/exports/workbook-apart.ts';
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

const unzipped = (book: Uint8Array): ReadonlyMap<string, string> =>
  new Map(Object.entries(unzipSync(book)).map(([path, bytes]) => [path, strFromU8(bytes)]));

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
  expect(book.Sheets.entries?.['!ref']).toBe('A1:Z5');
  expect(book.Sheets.stock?.C2).toMatchObject({ t: 'n', v: 0.6 });
});

const BOOK: Table = {
  name: 'account',
  columns: ['what', 'paid', 'gross', 'tax-rate'],
  totals: [
    { words: 'Paid', of: ['gross'], where: ['paid', 'yes'] },
    { words: 'Shown', of: ['gross'] },
  ],
  rows: [
    [
      'A long word for a cylinder of the front brake, nearside',
      'yes',
      { decimal: '1234.50', currency: 'GBP' },
      { decimal: '0.175', share: true },
    ],
    ['Pin', 'no', { decimal: '-0.50', currency: 'GBP' }, { decimal: '0.2', share: true }],
  ],
};

// Source: ECMA-376, part 1, 18.8.31: a currency is named in square brackets, a per cent sign multiplies by a hundred.
test('money is shown in its currency and a share in per cent', async () => {
  const sheet = (await readBack([BOOK])).Sheets.account ?? {};
  const shown = ['C2', 'C3', 'D2', 'D3'].map((at) => [sheet[at]?.v, sheet[at]?.z, sheet[at]?.w]);
  expect(shown).toEqual([
    [1234.5, '[$£]#,##0.00;-[$£]#,##0.00', '£1,234.50'],
    [-0.5, '[$£]#,##0.00;-[$£]#,##0.00', '-£0.50'],
    [0.175, '0.0%', '17.5%'],
    [0.2, '0%', '20%'],
  ]);
});

test('totals stand under the rows, one that follows the filter and one of what its words say', async () => {
  const sheet = (await readBack([BOOK])).Sheets.account ?? {};
  expect([sheet.A4?.v, sheet.C4?.f, sheet.C4?.v]).toEqual(['Paid', 'SUMIF(B2:B3,"yes",C2:C3)', 1234.5]);
  expect([sheet.A5?.v, sheet.C5?.f, sheet.C5?.v]).toEqual(['Shown', 'SUBTOTAL(109,C2:C3)', 1234]);
});

test('rows can be filtered, columns show their text, and a sheet prints one page wide with its heading on each', async () => {
  const files = unzipped(await workbookOf([BOOK]));
  const sheet = files.get('xl/worksheets/sheet1.xml') ?? '';
  // Source: ECMA-376, part 1, 18.3.1.99: the elements of a worksheet, in their order.
  expect(sheet).toMatch(/<worksheet[^>]*><sheetPr><pageSetUpPr fitToPage="1"\/><\/sheetPr>/);
  expect(sheet).toMatch(/<\/sheetData><autoFilter ref="A1:D3"\/>/);
  expect(sheet).toMatch(/<pageSetup[^>]* fitToWidth="1" fitToHeight="0"/);
  expect(Number(/<col min="1" max="1" width="(\d+)/.exec(sheet)?.[1])).toBeGreaterThanOrEqual(57);
  expect(files.get('xl/workbook.xml')).toContain('<definedName name="_xlnm.Print_Titles" localSheetId="0">\'account\'!$1:$1</definedName>');
});

test('the same tables make the same bytes', async () => {
  const first = await workbookOf([TABLE]);
  // A zip counts time in steps of two seconds.
  await new Promise((done) => setTimeout(done, 2100));
  expect(Buffer.from(await workbookOf([TABLE])).equals(Buffer.from(first))).toBe(true);
});

test('a workbook of so many rows that it is made in a thread has the same bytes', async () => {
  const long = { ...TABLE, rows: Array.from({ length: 10_001 }, () => TABLE.rows[0] ?? []) };
  const made = await workbookApart([long]);
  expect(Buffer.from(made).equals(Buffer.from(await workbookOf([long])))).toBe(true);
});

test('what goes wrong in the thread of a workbook is told', async () => {
  const long = { ...TABLE, rows: Array.from({ length: 10_001 }, () => TABLE.rows[0] ?? []) };
  await expect(workbookApart([{ ...long, name: 'a [name] that no sheet may have' }])).rejects.toThrow(/sheet/i);
});
