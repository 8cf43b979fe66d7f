/** The downloads opened by LibreOffice. Skipped, and said so, where the machine has none. */
import { describe, expect, test } from 'vitest';
import { billsTable } from '../../src/exports/bills.ts';
import { tableToCsv } from '../../src/exports/csv.ts';
import { entriesTable } from '../../src/exports/entries.ts';
import { hoursTable } from '../../src/exports/hours.ts';
import { stockTable } from '../../src/exports/stock.ts';
import type { Cell, Table } from '../../src/exports/table.ts';
import { workbookOf } from '../../src/exports/workbook.ts';
import { sumOf, viewAt } from '../../src/journal/ledger/sums.ts';
import { recordOf } from '../arbitraries/compiled.ts';
import { filesOf, type RawJournal } from '../arbitraries/raw-journal.ts';
import { HAS_OFFICE, type OfficeCell, openInOffice } from './office.ts';

const RAW: RawJournal = {
  method: 'average',
  opening: { ml: 2000, pence: 900 },
  sessions: [
    {
      day: 3,
      hours: [{ by: 'jm', on: 'drum', minutes: 25, unpaid: false }],
      lines: [
        { as: 'part', for: 'drum', pence: 4861, tax: 20, onTop: true, refund: false },
        { as: 'part', for: 'drum', pence: 1205, tax: 5, onTop: false, refund: true },
      ],
      sold: [{ on: 'frame', pence: 1200 }],
      stock: { bought: [{ ml: 500, pence: 377 }], used: [{ on: 'drum', perMille: 333 }], countedPerMille: null },
    },
  ],
};
/** What a spreadsheet would run, were it not told otherwise. */
const FORMULAS = ['=1+1', '+1+1', '-1+1', '@SUM(1,1)', '=HYPERLINK("x","y")', '\t=1+1'];
const AWKWARD: Table = { name: 'awkward', columns: ['what', 'number'], rows: FORMULAS.map((text, n) => [text, n]) };

function typeOf(cell: Cell): string | null {
  if (cell === null || cell === '') return null;
  if (typeof cell === 'string') return 'string';
  if (typeof cell === 'number') return 'float';
  if ('day' in cell) return 'date';
  return cell.currency ? 'currency' : cell.share ? 'percentage' : 'float';
}
const NUMBERS: ReadonlySet<string | null> = new Set(['float', 'currency', 'percentage']);
const contentOf = (cell: Cell): string | number | null =>
  typeof cell === 'object' ? (cell === null ? null : 'day' in cell ? cell.day : Number(cell.decimal)) : cell;
const kept = ({ type, value }: OfficeCell): string | number | null => (type === null ? null : NUMBERS.has(type) ? Number(value) : value);

describe.skipIf(!HAS_OFFICE)('opened in LibreOffice', () => {
  const record = recordOf(filesOf(RAW));
  const tables = [entriesTable(record, null), billsTable(record, null), stockTable(record, null), hoursTable(record, null), AWKWARD];

  test('every cell of the workbook has its type and its value, and none is a formula', async () => {
    const book = await openInOffice('ledger.xlsx', await workbookOf(tables));
    for (const { name, columns, rows } of tables) {
      const [head = [], ...lines] = book.get(name) ?? [];
      expect([name, head.slice(0, columns.length).map(({ value }) => value)]).toEqual([name, columns]);
      rows.forEach((row, n) => {
        const cells = columns.map((_, at) => lines[n]?.[at] ?? { type: null, value: '', formula: null });
        expect([name, n, cells.map(({ type }) => type)]).toEqual([name, n, row.map(typeOf)]);
        if (name !== 'awkward') expect([name, n, cells.map(kept)]).toEqual([name, n, row.map(contentOf)]);
      });
    }
    // Only the sums under the rows reckon.
    const inRows = tables.flatMap(({ name, rows }) => (book.get(name) ?? []).slice(0, rows.length + 1).flat());
    expect(inRows.filter(({ formula }) => formula !== null)).toEqual([]);
  });

  test('the amounts of the table of entries are numbers that add up to the ledger', async () => {
    const [head = [], ...lines] = [...(await openInOffice('entries.csv', tableToCsv(entriesTable(record, null)))).values()][0] ?? [];
    const [gross, paid] = ['gross', 'paid'].map((name) => head.findIndex(({ value }) => value === name));
    const out = lines.filter((line) => line[paid ?? -1]?.value === 'yes').map((line) => line[gross ?? -1]);
    expect(out.map((cell) => cell?.type)).toEqual(out.map(() => 'float'));
    const pence = out.reduce((sum, cell) => sum + Math.round(Number(cell?.value) * 100), 0);
    expect(pence).toBe(sumOf(viewAt(record, 'paid', null)).gross);
  });

  test('text that begins like a formula is not run, though formulas are', async () => {
    const cells = [...(await openInOffice('awkward.csv', tableToCsv(AWKWARD))).values()].flat(2);
    expect(cells.filter(({ formula }) => formula !== null)).toEqual([]);
    const [run] = [...(await openInOffice('run.csv', '=1+1\r\n')).values()].flat(2);
    expect(run?.formula).toBe('of:=1+1');
  });
});
