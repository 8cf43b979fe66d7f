/** Tables as one spreadsheet file, a sheet each, with typed cells (XLSX: ISO/IEC 29500). */
import writeXlsxFile, { type Cell as SheetCell } from 'write-excel-file/universal';
import type { Cell, Table } from './table.ts';

/**
 * The bytes of a workbook. Text stays text whatever it begins with, numbers are numbers with as many
 * decimals shown as they were given, dates are dates. Equal tables make equal bytes.
 */
export async function workbookOf(tables: readonly Table[]): Promise<Uint8Array> {
  const sheets = tables.map(({ name, columns, rows }) => ({
    sheet: name,
    stickyRowsCount: 1,
    columns: columns.map((column) => ({ width: Math.max(10, column.length + 2) })),
    data: [
      columns.map((column): SheetCell => ({ value: column, type: String, fontWeight: 'bold' })),
      ...rows.map((row) => row.map(cellOf)),
    ],
  }));
  const blob = await writeXlsxFile(sheets).toBlob();
  return withoutDates(new Uint8Array(await blob.arrayBuffer()));
}

function cellOf(cell: Cell): SheetCell {
  if (cell === null || cell === '') return null;
  if (typeof cell === 'string') return { value: cell, type: String };
  if (typeof cell === 'number') return { value: cell, type: Number };
  if ('day' in cell) return { value: new Date(`${cell.day}T00:00:00Z`), type: Date, format: 'yyyy-mm-dd' };
  return { value: Number(cell.decimal), type: Number, format: formatFor(cell.decimal) };
}

function formatFor(decimal: string): string {
  const places = decimal.split('.')[1]?.length ?? 0;
  return places === 0 ? '0' : `0.${'0'.repeat(places)}`;
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
