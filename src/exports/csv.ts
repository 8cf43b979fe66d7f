import type { Cell, Table } from './table.ts';

/**
 * A table as CSV text: lines end in CRLF, a field with a comma, a quote or a line break is quoted and
 * its quotes are doubled. Source: RFC 4180, section 2.
 *
 * Text that a spreadsheet would run as a formula gets an apostrophe before it (source: OWASP, CSV
 * injection), behind what may be a list separator too; numbers and dates are plain. A byte order mark stands first
 * where there is more than plain letters, for spreadsheets that take a file without one for another encoding.
 *
 * @param header the names of the columns
 * @param rows one array a line, as many fields as the header
 */
export function csvOf(header: readonly string[], rows: readonly (readonly Cell[])[]): string {
  const text = [header, ...rows].map((row) => `${row.map(field).join(',')}\r\n`).join('');
  return /[^\0-\x7f]/.test(text) ? `\ufeff${text}` : text;
}

/** A named table as CSV text. */
export function tableToCsv({ columns, rows }: Table): string {
  return csvOf(columns, rows);
}

function field(value: Cell): string {
  if (value === null) return '';
  if (typeof value === 'number') return String(value);
  if (typeof value === 'object') return 'day' in value ? value.day : value.decimal;
  const text = harmless(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** The signs that begin a formula, in their wide forms too, and what spreadsheets skip before one. */
const FORMULA = /^[=+\-@\t\r\n＝＋－＠]/;

/** The same behind a list separator other than the comma: a spreadsheet set to it splits the line there, within quotes too. */
const FORMULA_BEHIND = /(?<=[\s\S])([;|\t] *)(?=[=+\-@＝＋－＠])/g;

/** Text as a spreadsheet shows it and never runs it. */
export function harmless(text: string): string {
  const guarded = text.replace(FORMULA_BEHIND, "$1'");
  return FORMULA.test(guarded) ? `'${guarded}` : guarded;
}
