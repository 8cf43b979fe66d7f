import { parse } from 'csv-parse/sync';
import fc from 'fast-check';
import Fraction from 'fraction.js';
import { describe, expect, test } from 'vitest';
import { billsTable } from '../../src/exports/bills.ts';
import { csvOf, tableToCsv } from '../../src/exports/csv.ts';
import { entriesTable } from '../../src/exports/entries.ts';
import { hoursTable } from '../../src/exports/hours.ts';
import { statementTable } from '../../src/exports/statement.ts';
import { stockTable } from '../../src/exports/stock.ts';
import type { Table } from '../../src/exports/table.ts';
import { statementOf } from '../../src/journal/ledger/statement.ts';
import { stockAt } from '../../src/journal/ledger/stock-at.ts';
import { sumOf, viewAt } from '../../src/journal/ledger/sums.ts';
import { recordOf } from '../arbitraries/compiled.ts';
import { dateOf, filesOf, rawJournal } from '../arbitraries/raw-journal.ts';
import { JOURNAL, journalWith } from '../ledger/small-journal.ts';

/** A CSV text read back by an independent parser (csv-parse), strictly. */
function readBack(text: string): string[][] {
  return parse(text, { bom: true, record_delimiter: '\r\n', relax_quotes: false, relax_column_count: false });
}

/** Its lines by the names of its columns. */
function lines(table: Table): Record<string, string>[] {
  return parse(tableToCsv(table), { bom: true, columns: true, record_delimiter: '\r\n' });
}

const total = (rows: readonly Record<string, string>[], column: string): Fraction =>
  rows.reduce((all, row) => all.add(row[column] === '' ? 0 : (row[column] ?? 0)), new Fraction(0));

describe('a CSV file', () => {
  // Source: RFC 4180, section 2.
  test('quotes commas, quotes and line breaks, and ends every line with CRLF', () => {
    expect(
      csvOf(
        ['a', 'b'],
        [
          ['x,y', 'say "so"'],
          ['two\nlines', ''],
        ],
      ),
    ).toBe('a,b\r\n"x,y","say ""so"""\r\n"two\nlines",\r\n');
  });

  test('is read back as it was written, by another parser', () => {
    // Not beginning like a formula, which is written with an apostrophe.
    const text = fc.string({ unit: 'grapheme', maxLength: 12 }).filter((each) => !/^[=+\-@\t\r\n＝＋－＠]/.test(each));
    const awkward = fc.constantFrom('a,b', '"', '""', 'a\r\nb', 'x\ny', ' lead', 'trail ', ',', '5"');
    fc.assert(
      fc.property(fc.array(fc.tuple(fc.oneof(text, awkward), fc.oneof(text, awkward)), { minLength: 1 }), (rows) => {
        expect(readBack(csvOf(['one', 'two'], rows))).toEqual([['one', 'two'], ...rows]);
      }),
    );
  });

  // Source: The Unicode Standard, section 23.8: the mark tells the encoding to programs that guess at it.
  test('begins with a byte order mark where its text has more than plain letters, and nowhere else', () => {
    expect(csvOf(['what'], [['1951\u20131960']])).toBe('\ufeffwhat\r\n1951\u20131960\r\n');
    expect(csvOf(['what'], [['plain']])).toBe('what\r\nplain\r\n');
  });

  // A spreadsheet whose list separator is another splits the line there, within a field too.
  test.each([';', '\t', '|', '; ', ';;'])('never gives a spreadsheet a formula behind the list separator %j', (separator) => {
    expect(readBack(csvOf(['what'], [[`a${separator}=1+1`]]))[1]?.[0]).toBe(`a${separator}'=1+1`);
  });

  // Source: OWASP, CSV injection.
  test.each(['=1+1', '+1', '-1', '@sum(a1)', '\t=1', '\r=1', '\n=1', '＝1+1', '=cmd|"/c calc"!a1'])(
    'never gives a spreadsheet the formula %j',
    (text) => {
      expect(readBack(csvOf(['what'], [[text]]))[1]?.[0]).toBe(`'${text}`);
    },
  );

  test('leaves numbers plain, negative ones too', () => {
    expect(csvOf(['a', 'b', 'c', 'd'], [[-3, { decimal: '-12.50' }, { day: '2031-03-12' }, null]])).toBe(
      'a,b,c,d\r\n-3,-12.50,2031-03-12,\r\n',
    );
  });
});

test('the entries, added up from the file, are the ledger', () => {
  fc.assert(
    fc.property(rawJournal(8), (raw) => {
      const record = recordOf(filesOf(raw));
      const rows = lines(entriesTable(record, null));
      const [paid, cost] = [sumOf(viewAt(record, 'paid', null)), sumOf(viewAt(record, 'cost', null))];
      expect(
        total(
          rows.filter((row) => row.paid === 'yes'),
          'gross',
        )
          .mul(100)
          .equals(paid.gross),
      ).toBe(true);
      expect(
        total(
          rows.filter((row) => row.cost === 'yes'),
          'gross',
        )
          .mul(100)
          .equals(cost.gross),
      ).toBe(true);
      for (const row of rows) expect(new Fraction(row.net ?? '').add(row.tax ?? '').equals(row.gross ?? '')).toBe(true);
      expect(total(lines(hoursTable(record, null)), 'minutes').equals(cost.minutes)).toBe(true);
      const bills = record.ledger.bills.reduce((all, bill) => all + bill.gross, 0);
      expect(
        total(lines(billsTable(record, null)), 'gross')
          .mul(100)
          .equals(bills),
      ).toBe(true);
    }),
    { numRuns: 25 },
  );
});

test('files as at a day hold nothing later', () => {
  fc.assert(
    fc.property(rawJournal(8), fc.integer({ min: 0, max: 400 }), (raw, day) => {
      const record = recordOf(filesOf(raw));
      for (const table of [entriesTable, billsTable, hoursTable]) {
        const dates = lines(table(record, null)).map((row) => row.date ?? '');
        expect(lines(table(record, dateOf(day))).map((row) => row.date)).toEqual(dates.filter((date) => date <= dateOf(day)));
      }
    }),
    { numRuns: 15 },
  );
});

describe('the stock file', () => {
  test('has these columns and no others', () => {
    expect(stockTable(recordOf(filesOf({ method: 'fifo', opening: { ml: 1, pence: 1 }, sessions: [] })), null).columns).toEqual([
      'consumable',
      'unit',
      'opening-and-bought',
      'used',
      'left',
      'value-used',
      'value-left',
    ]);
  });

  test('adds up in every row: bought is used and left, and values are what was paid', () => {
    fc.assert(
      fc.property(rawJournal(8), (raw) => {
        const record = recordOf(filesOf(raw));
        const [row] = lines(stockTable(record, null));
        const of = (column: string) => new Fraction(row?.[column] ?? 'none');
        expect(of('used').add(of('left')).equals(of('opening-and-bought'))).toBe(true);
        const [stock] = stockAt(record, null);
        expect(
          of('value-used')
            .add(of('value-left'))
            .mul(100)
            .equals((stock?.opening.value ?? 0) + (stock?.bought.value ?? 0)),
        ).toBe(true);
      }),
      { numRuns: 25 },
    );
  });

  test('adds up where decimals do not end', () => {
    const files = filesOf({ method: 'fifo', opening: { ml: 1000, pence: 100 }, sessions: [] });
    const record = recordOf({
      ...files,
      'consumables.yaml': 'oil: { name: Oil, unit: imp-pt, opening: { amount: 1 L, value: 3.00 } }\n',
      'sessions/2031-01-01.md': '---\ndate: 2031-01-01\ntitle: Oil\nused: [{ consumable: oil, amount: 100 ml, on: brakes }]\n---\n',
    });
    const [row] = lines(stockTable(record, null));
    expect(row).toMatchObject({ unit: 'imp-pt', 'opening-and-bought': '1.759753986', used: '0.175975399', left: '1.583778587' });
  });
});

test('a statement file has what was not charged, with its reason, where the journal shows that', () => {
  const notes = 'hours: [{ by: jm, on: brakes, time: 1h }, { by: jm, on: brakes, time: 45m, unpaid: "My own mistake, twice" }]';
  const rowsWith = (shows: string) => {
    const { record } = journalWith({ journal: `${JOURNAL}statement: { shows: [${shows}] }\n` }, ['2031-03-12', notes]);
    const rows = lines(statementTable(statementOf(record, '2031-03-01', '2031-03-31'), record.journal.settings));
    return rows.filter(({ row }) => row === 'not-charged');
  };
  expect(rowsWith('not-charged')).toEqual([
    expect.objectContaining({ kind: 'labour', what: 'Evening; not charged: My own mistake, twice', minutes: '45', charged: '0.00' }),
  ]);
  expect(rowsWith('costs')).toEqual([]);
});

test('a statement file sums its entries into its total', () => {
  fc.assert(
    fc.property(rawJournal(8), (raw) => {
      const record = recordOf(filesOf(raw));
      const rows = lines(statementTable(statementOf(record, dateOf(0), dateOf(400)), record.journal.settings));
      const of = (kind: string) => rows.filter((row) => row.row === kind);
      for (const column of ['tax', 'net', 'charged']) {
        expect(total(of('entry'), column).equals(total(of('total'), column))).toBe(true);
        expect(total(of('subtotal'), column).equals(total(of('total'), column))).toBe(true);
      }
      expect(total(of('tax'), 'tax').equals(total(of('total'), 'tax'))).toBe(true);
      expect(rows.some((row) => 'cost' in row || 'mark-up' in row)).toBe(false);
    }),
    { numRuns: 25 },
  );
});
