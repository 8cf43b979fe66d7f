import { describe, expect, test } from 'vitest';
import type { JournalRecord } from '../../../../src/journal/record.ts';
import { runningAddress } from '../../../../src/site/views/books/running-totals.ts';
import { type AccountTable, accountOfYear, accountTables, ledgerYears } from '../../../../src/site/views/ledger/account.ts';
import { recordOf } from '../../../arbitraries/compiled.ts';

/** Each evening: a day, what was worked on, and the pounds paid. */
function recordFrom(evenings: readonly (readonly [date: string, on: string, pounds: number])[]): JournalRecord {
  const notes = evenings.map(([date, on, pounds]) => [
    `sessions/${date}.md`,
    `---\ndate: ${date}\ntitle: Evening\nhours: [{ by: rh, on: ${on}, time: 1h }]\nbought: [{ what: Thing, as: tool, for: ${on}, cost: ${pounds}.00${pounds < 0 ? ', refund: sent back' : ''} }]\n---\n`,
  ]);
  return recordOf({
    'journal.yaml': `title: Van
vehicle: { make: Quernby }
arrived: 2030-01-01
currency: GBP
time-zone: Europe/London
locale: en-GB
people: { rh: { name: Ruth, rate: 0 } }
subsystems: { brakes: { name: Brakes }, frame: { name: Frame }, trim: { name: Trim } }
`,
    ...Object.fromEntries(notes),
  });
}

const LONG = recordFrom([
  ['2030-02-01', 'brakes', 1],
  ['2030-12-31', 'frame', 2],
  ['2031-01-01', 'brakes', 4],
  // Nothing in 2032.
  ['2033-06-01', 'frame', 8],
  ['2034-06-01', 'brakes', 16],
  ['2034-07-01', 'brakes', 32],
]);
const SHORT = recordFrom([
  ['2030-02-01', 'brakes', 1],
  ['2031-01-01', 'frame', 2],
]);

const figuresIn = ({ rows, totals, total }: AccountTable) => ({
  rows: Object.fromEntries(rows.map((row) => [row.heading.name, [...row.cells.map((cell) => cell?.sum.gross ?? 0), row.total.sum.gross]])),
  together: [...totals.map((cell) => cell?.sum.gross ?? 0), total.sum.gross],
});

describe('the account of a long journal', () => {
  const [whole, last, ...more] = accountTables(LONG, 'cost', 'gross');

  test('has a row a year, which leads to the page of that year, and beside it the months of the last year alone', () => {
    expect(more).toEqual([]);
    expect([whole?.head, last?.of]).toEqual(['Year', '2034']);
    expect(whole?.columns.map(({ name }) => name)).toEqual(['Brakes', 'Frame']);
    expect(whole && figuresIn(whole)).toEqual({
      rows: { 2030: [100, 200, 300], 2031: [400, 0, 400], 2033: [0, 800, 800], 2034: [4800, 0, 4800] },
      together: [5300, 1000, 6300],
    });
    expect(whole?.rows.map(({ heading }) => heading.to)).toEqual(
      ['2030', '2031', '2033', '2034'].map((year) => `ledger/year/${year}.html`),
    );
  });

  test('has a page for every year, which adds up to its row', () => {
    expect(ledgerYears(LONG)).toEqual(['2030', '2031', '2032', '2033', '2034']);
    for (const row of whole?.rows ?? []) {
      const { total, rows, columns } = accountOfYear(LONG, 'cost', 'gross', row.heading.name);
      expect(total.sum.gross).toBe(row.total.sum.gross);
      expect(total.to).toBe(row.total.to);
      expect(columns.length).toBeGreaterThan(0);
      for (const { cells, total: ofRow } of rows)
        expect(cells.reduce((sum, cell) => sum + (cell?.sum.gross ?? 0), 0)).toBe(ofRow.sum.gross);
    }
    expect(accountOfYear(LONG, 'cost', 'gross', '2032').rows).toEqual([]);
  });

  test('counts hours alike', () => {
    expect(accountTables(LONG, 'cost', 'minutes')[0]?.total.sum.minutes).toBe(360);
  });
});

test('a year that comes to nothing has its row, so that columns foot', () => {
  const record = recordFrom([
    ['2030-02-01', 'brakes', 1],
    ['2031-02-01', 'brakes', 4],
    ['2031-03-01', 'frame', -4],
    ['2032-02-01', 'brakes', 8],
    ['2033-02-01', 'trim', 5],
    ['2033-02-02', 'trim', -5],
  ]);
  const [whole] = accountTables(record, 'paid', 'gross');
  expect(whole && figuresIn(whole)).toEqual({
    rows: { 2030: [100, 0, 0, 100], 2031: [400, -400, 0, 0], 2032: [800, 0, 0, 800], 2033: [0, 0, 0, 0] },
    together: [1300, -400, 0, 900],
  });
  expect(whole?.rows.map(({ cells }) => cells.map((cell) => cell !== null))).toEqual([
    [true, false, false],
    [true, true, false],
    [true, false, false],
    [false, false, true],
  ]);
});

test('the account of a short journal has a table that adds up the years and one a year, all on one page', () => {
  const tables = accountTables(SHORT, 'cost', 'gross');
  expect(tables.map(({ of, head }) => [of, head])).toEqual([
    ['all years', 'Subsystem'],
    ['2030', 'Subsystem'],
    ['2031', 'Subsystem'],
  ]);
  expect(ledgerYears(SHORT)).toEqual([]);
  expect(tables[0]?.columns.map(({ name }) => name)).toEqual(['2030', '2031']);
});

test('a figure of a past day opens the line under the last entry of then, and none before the first', () => {
  expect(runningAddress(LONG, 'subsystem-brakes', '2033-12-31')).toBe('ledger/entries/subsystem-brakes.html#to-2031-01-01');
  expect(runningAddress(LONG, 'all', '2033-12-31')).toBe('ledger/entries.html#to-2033-06-01');
  expect(runningAddress(LONG, 'subsystem-frame', '2030-11-30')).toBeNull();
});
