/** Tax of each kind by itself: what was paid, what was sold, what the client is charged. */
import { describe, expect, test } from 'vitest';
import { statementTable } from '../../src/exports/statement.ts';
import { statementDocument } from '../../src/exports/statement-document.ts';
import { statementOf } from '../../src/journal/ledger/statement.ts';
import { taxSummary } from '../../src/journal/ledger/tax-summary.ts';
import { hours, JOURNAL, journalWith } from './small-journal.ts';

// Parts of 120.00 and a sale of 12.00, both with a fifth on the net in them, and an hour at 30.00; mark-up of 10 % on the part.
const { record } = journalWith({ journal: `${JOURNAL}workshop: { name: W, tax-number: GB 000, tax: 20% }\n` }, [
  '2031-05-12',
  `${hours('jm', '1h')}
bought: [{ what: Lamp, as: part, for: frame, cost: 120.00, tax: 20% }]
sold: [{ what: Rims, on: frame, price: 12.00, tax: 20% }]`,
]);
const statement = statementOf(record, '2031-05-01', '2031-05-31');

describe('a sale at the rate of what is charged', () => {
  test('is a row of its own in the tax of a statement', () => {
    const rows = statement.taxes.map(({ rate, sold, sum }) => [rate.toFraction(), sold, sum.net + sum.markUp, sum.tax, sum.charged]);
    // 30.00 + 100.00 + 10.00 of mark-up bear 28.00.
    expect(rows).toEqual([
      ['1/5', false, 14_000, 2800, 16_800],
      ['1/5', true, -1000, -200, -1200],
    ]);
    expect(rows.reduce((sum, [, , , tax]) => sum + Number(tax), 0)).toBe(statement.sum.tax);
  });

  test('and so it is in what is sent', () => {
    const table = statementDocument(statement, record.journal).tables.find(({ title }) => title === 'Tax, inside the amounts charged');
    expect(table?.rows).toEqual([
      ['At 20 %', '£140.00', '£28.00', '£168.00'],
      ['Sold, at 20 %', '−£10.00', '−£2.00', '−£12.00'],
    ]);
    const { columns, rows } = statementTable(statement, record.journal.settings);
    const what = columns.indexOf('what');
    expect(rows.filter(([row]) => row === 'tax').map((row) => row[what])).toEqual(['At 20 %', 'Sold, at 20 %']);
  });
});

test('a sale of which no tax is said has its row too, so that the rows come to what is charged', () => {
  const untaxed = journalWith({ journal: `${JOURNAL}workshop: { name: W, tax-number: GB 000, tax: 20% }\n` }, [
    '2031-05-12',
    `${hours('jm', '1h')}\nsold: [{ what: Offcuts, on: frame, price: 3.00 }]`,
  ]);
  const sent = statementOf(untaxed.record, '2031-05-01', '2031-05-31');
  const { tables } = statementDocument(sent, untaxed.record.journal);
  expect(tables.find(({ title }) => title === 'Tax, inside the amounts charged')?.rows).toEqual([
    ['At 20 %', '£30.00', '£6.00', '£36.00'],
    ['Sold, without tax', '−£3.00', '£0.00', '−£3.00'],
  ]);
  expect(sent.sum).toMatchObject({ tax: 600, charged: 3300 });
});

test('in the books, what was paid, sold and charged are three accounts of tax', () => {
  const { paid, sold, charged } = taxSummary(record, record.day);
  expect(paid.map(({ sum }) => [sum.net, sum.tax, sum.gross])).toEqual([[10_000, 2000, 12_000]]);
  expect(sold.map(({ sum }) => [sum.net, sum.tax, sum.gross])).toEqual([[-1000, -200, -1200]]);
  expect(charged.map(({ sum }) => [sum.net + sum.markUp, sum.tax])).toEqual([[14_000, 2800]]);
});
