/** LibreOffice, where the machine has it: opens a file as a restorer would, and tells what it made of each cell. */
import { execFile, execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { promisify } from 'node:util';
import { parseHTML } from 'linkedom';

export interface OfficeCell {
  /** `string`, `float`, `date`; null for an empty cell */
  readonly type: string | null;
  /** A number or date as it is kept, text as it is shown. */
  readonly value: string;
  readonly formula: string | null;
}

/** Sheets by name: rows of cells. */
export type OfficeBook = ReadonlyMap<string, readonly (readonly OfficeCell[])[]>;

export const HAS_OFFICE = (() => {
  try {
    execFileSync('soffice', ['--version'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
})();

/** Comma, double quote, UTF-8, from the first line; numbers are recognised and formulas run, as an unwary reader lets them. */
const CSV_AS_UNWARY = 'CSV:44,34,76,1,,0,false,true,false,false,false,0,true';

/** Opens the bytes of a file, whose name says of which kind it is, and reads the cells back from a flat OpenDocument file. */
export async function openInOffice(name: string, bytes: Uint8Array | string): Promise<OfficeBook> {
  const room = mkdtempSync(join(tmpdir(), 'asfound-office-'));
  try {
    const file = join(room, name);
    writeFileSync(file, bytes);
    const filter = name.endsWith('.csv') ? [`--infilter=${CSV_AS_UNWARY}`] : [];
    const profile = `-env:UserInstallation=${pathToFileURL(join(room, 'profile')).href}`;
    await promisify(execFile)('soffice', [profile, '--headless', ...filter, '--convert-to', 'fods', '--outdir', room, file]);
    return booksIn(readFileSync(file.replace(/\.\w+$/, '.fods'), 'utf8'));
  } finally {
    rmSync(room, { recursive: true, force: true });
  }
}

/** Source of the names: OpenDocument 1.3, part 3, section 9 (tables) and 19.385 (value types). */
function booksIn(flat: string): OfficeBook {
  const body = flat.slice(flat.indexOf('<office:spreadsheet>'), flat.indexOf('</office:spreadsheet>'));
  const { document } = parseHTML(
    `<html><body>${body.replaceAll(/<(\/?)(\w+):(\w[\w-]*)/g, '<$1$2-$3').replaceAll(/<([\w-]+)([^>]*)\/>/g, '<$1$2></$1>')}</body></html>`,
  );
  const sheets = [...document.querySelectorAll('table-table')];
  return new Map(
    sheets.map((sheet) => [sheet.getAttribute('table:name') ?? '', [...sheet.querySelectorAll('table-table-row')].map(cellsIn)]),
  );
}

function cellsIn(row: Element): OfficeCell[] {
  return [...row.querySelectorAll('table-table-cell')].flatMap((cell) => {
    const type = cell.getAttribute('office:value-type');
    const kept = cell.getAttribute('office:value') ?? cell.getAttribute('office:date-value') ?? cell.textContent?.trim() ?? '';
    const made = { type, value: kept, formula: cell.getAttribute('table:formula') };
    return Array.from({ length: Math.min(64, Number(cell.getAttribute('table:number-columns-repeated') ?? 1)) }, () => made);
  });
}
