/** Tables as one spreadsheet file, a sheet each, with typed cells (XLSX: ISO/IEC 29500). */

import writeXlsxFile, { type Feature, type Sheet, type Cell as SheetCell } from 'write-excel-file/universal';
import { signsOf } from '../journal/values/currency.ts';
import { letterOf, sumsAt, totalRow } from './sheet-totals.ts';
import type { Cell, Decimal, Table } from './table.ts';

/**
 * The bytes of a workbook. Text stays text whatever it begins with; numbers have as many decimals as they were given,
 * money its sign of currency, shares their per cent; dates are dates. Rows can be filtered, sums stand under them,
 * columns are as wide as their text, and a sheet prints one page wide. Equal tables make equal bytes.
 */
export async function workbookOf(tables: readonly Table[]): Promise<Uint8Array> {
  const blob = await writeXlsxFile(tables.map(sheetOf), { features: [printing(tables)] }).toBlob();
  return withoutDates(new Uint8Array(await blob.arrayBuffer()));
}

function sheetOf(table: Table): Sheet<Blob> {
  const { name, columns, rows, totals = [] } = table;
  return {
    sheet: name,
    stickyRowsCount: 1,
    orientation: 'landscape',
    columns: columns.map((_, at) => ({ width: widthOf(table, at) })),
    data: [
      columns.map((column): SheetCell => ({ value: column, type: String, fontWeight: 'bold' })),
      ...rows.map((row) => row.map(cellOf)),
      ...totals.map((total) => totalRow(total, table, formatFor)),
    ],
  } as Sheet<Blob>;
}

/** Characters of the widest column; longer text goes on in further lines. */
const WIDEST = 60;

function widthOf({ columns, rows, totals = [] }: Table, at: number): number {
  const head = (columns[at]?.length ?? 0) + 3;
  const sums = at === 0 ? totals.map(({ words }) => words.length) : [];
  const widest = rows.reduce((most, row) => Math.max(most, shownLength(row[at] ?? null)), Math.max(head, ...sums));
  return Math.min(WIDEST, widest) + 2;
}

function shownLength(cell: Cell): number {
  if (cell === null) return 0;
  if (typeof cell !== 'object') return String(cell).length;
  if ('day' in cell) return cell.day.length;
  // Marks between thousands, and a sign of currency.
  return cell.decimal.length * 1.35 + (cell.currency === undefined ? 0 : signOf(cell.currency).length);
}

function cellOf(cell: Cell): SheetCell {
  if (cell === null || cell === '') return null;
  if (typeof cell === 'string') return { value: cell, type: String, ...(cell.length > WIDEST ? { wrap: true } : {}) };
  if (typeof cell === 'number') return { value: cell, type: Number };
  if ('day' in cell) return { value: new Date(`${cell.day}T00:00:00Z`), type: Date, format: 'yyyy-mm-dd' };
  return { value: Number(cell.decimal), type: Number, format: formatFor(cell) };
}

/** Source of the codes: ECMA-376, part 1, 18.8.31. */
function formatFor({ decimal, currency, share }: Decimal): string {
  const places = decimal.split('.')[1]?.length ?? 0;
  const decimals = (count: number): string => (count > 0 ? `.${'0'.repeat(count)}` : '');
  if (share) return `0${decimals(places - 2)}%`;
  if (currency === undefined) return `0${decimals(places)}`;
  const amount = `[$${signOf(currency)}]#,##0${decimals(places)}`;
  return `${amount};-${amount}`;
}

/** The shortest sign of a currency. */
function signOf(currency: string): string {
  return signsOf(currency).at(-1) ?? currency;
}

/** What the writer has no words for: filters, one page wide, the heading on every page. */
function printing(tables: readonly Table[]): Feature<Blob> {
  return {
    files: {
      transform: {
        'xl/worksheets/sheet{id}.xml': {
          transform: (xml, _, { sheetIndex }) => {
            const table = tables[sheetIndex];
            if (table === undefined) return xml;
            const { columns, rows } = table;
            const sums = sumsAt(table);
            const filter = `<autoFilter ref="A1:${letterOf(columns.length - 1)}${rows.length + 1}"/>`;
            // Formulas stand under the rows alone, which may be many.
            const under = xml.includes('<f>') ? xml.lastIndexOf('<row', xml.indexOf('<f>')) : xml.length;
            const summed = xml
              .slice(under)
              .replace(/(<c r="([A-Z]+\d+)"[^>]*><f>.*?<\/f>)<\/c>/g, (_all, cell, at) => `${cell}<v>${sums.get(at) ?? 0}</v></c>`);
            return `${xml.slice(0, under)}${summed}`
              .replace(/<worksheet[^>]*>/, '$&<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>')
              .replace('</sheetData>', `</sheetData>${filter}`)
              .replace(/<pageSetup([^>]*?)\s*\/>/, '<pageSetup$1 fitToWidth="1" fitToHeight="0"/>');
          },
        },
        'xl/workbook.xml': {
          transform: (xml) => {
            const names = tables.map(
              ({ name }, at) => `<definedName name="_xlnm.Print_Titles" localSheetId="${at}">'${name}'!$1:$1</definedName>`,
            );
            return xml.replace('</sheets>', `</sheets><definedNames>${names.join('')}</definedNames>`);
          },
        },
      },
    },
  };
}

/** 1980-01-01 00:00, the first moment a zip can say. */
const NO_DATE = 0x0021_0000;

/**
 * Zip entries carry the moment they were written; a fixed one makes the same tables the same bytes. It stands in
 * the directory at the end and again before each entry (PKWARE's APPNOTE 6.3, sections 4.3.7, 4.3.12 and 4.3.16).
 */
function withoutDates(zipped: Uint8Array): Uint8Array {
  const view = new DataView(zipped.buffer, zipped.byteOffset, zipped.byteLength);
  // The archive has no comment, so its last record is 22 bytes long.
  const end = zipped.byteLength - 22;
  let at = view.getUint32(end + 16, true);
  for (let left = view.getUint16(end + 10, true); left > 0; left -= 1) {
    view.setUint32(at + 12, NO_DATE, true);
    view.setUint32(view.getUint32(at + 42, true) + 10, NO_DATE, true);
    at += 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return zipped;
}
