/** Tables as one spreadsheet file, a sheet each, with typed cells (XLSX: ISO/IEC 29500). */
import { unzipSync, zipSync } from 'fflate';
import writeXlsxFile, { type Cell as SheetCell } from 'write-excel-file/universal';
import type { Cell, Table } from './table.ts';

/** Zip entries carry a date; a fixed one makes the same tables the same bytes. */
const NO_DATE = new Date(1980, 0, 1);

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

function withoutDates(zipped: Uint8Array): Uint8Array {
  const files = Object.entries(unzipSync(zipped)).sort(([a], [b]) => (a < b ? -1 : 1));
  return zipSync(Object.fromEntries(files), { mtime: NO_DATE, level: 6 });
}
