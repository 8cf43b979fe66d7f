/**
 * A table as CSV text: lines end in CRLF, a field with a comma, a quote or a line break is quoted and
 * its quotes are doubled. Source: RFC 4180, section 2.
 *
 * @param header the names of the columns
 * @param rows one array a line, as many fields as the header
 */
export function csvOf(header: readonly string[], rows: readonly (readonly (string | number)[])[]): string {
  return [header, ...rows].map((row) => `${row.map(field).join(',')}\r\n`).join('');
}

function field(value: string | number): string {
  const text = String(value);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
