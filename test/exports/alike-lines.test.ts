/** What a client reads twice in the same words is told once, with how many it is. */
import { expect, test } from 'vitest';
import { statementTable } from '../../src/exports/statement.ts';
import { statementDocument } from '../../src/exports/statement-document.ts';
import { statementOf } from '../../src/journal/ledger/statement.ts';
import { JOURNAL, journal, journalWith } from '../ledger/small-journal.ts';

test('a purchase that was split on two parts, and two of one name, are a line each with their sum; hours stay apart', () => {
  const { record, problems } = journal([
    '2031-05-12',
    `hours: [{ by: jm, on: drum, time: 1h }, { by: jm, on: drum, time: 1h }]
bought:
  - { what: Tyres, for: drum, cost: 90.00, split: { drum: 2, drum-spare: 1 } }
  - { what: Pin, for: drum, cost: 2.00 }
  - { what: Pin, for: drum-spare, cost: 3.00 }
  - { what: Pin, for: frame, cost: 4.00 }`,
  ]);
  expect(problems).toEqual([]);
  const statement = statementOf(record, '2031-05-01', '2031-05-31');
  const { tables } = statementDocument(statement, record.journal);
  const rowsOf = (id: string) => tables.find((table) => table.id === id)?.rows.map((cells) => [cells[1], cells.at(-1)]);
  expect(rowsOf('part')).toEqual([
    ['Tyres (2 entries)', '£99.00'],
    ['Pin (2 entries)', '£5.50'],
    ['Pin', '£4.40'],
  ]);
  expect(rowsOf('labour')).toHaveLength(2);
  expect(tables.find(({ id }) => id === 'part')?.entries).toHaveLength(3);
});

const sent = (settings: string) => {
  const lines = ['Pin', 'Cap', 'Clip'].map((what) => `{ what: ${what}, as: part, for: drum, cost: 10.33 }`).join(', ');
  const { record, problems } = journalWith({ journal: `${JOURNAL}${settings}` }, [
    '2031-05-12',
    `hours: [{ by: rh, on: drum, time: 1h, unpaid: learning how }]
bills: [{ from: a factor, tax: 20% on top, total: 37.19, lines: [${lines}] }]`,
  ]);
  expect(problems).toEqual([]);
  const statement = statementOf(record, '2031-05-01', '2031-05-31');
  return { ...statementDocument(statement, record.journal), csv: statementTable(statement, record.journal.settings) };
};
const REGISTERED = 'workshop: { name: W, tax-number: GB 000, tax: 20% }\n';

test('a line of nothing is not on a statement: what tax comes to beyond the lines of a bill, where it is charged at nothing', () => {
  const said = sent(REGISTERED);
  expect(said.tables.map(({ id }) => id)).toEqual(['part', 'tax-charged', 'together', 'account']);
  expect(JSON.stringify(said)).not.toMatch(/line by line/);
  expect(JSON.stringify(sent(`${REGISTERED}statement: { shows: [costs] }\n`).tables)).toMatch(/line by line/);
});

test('why something is not charged begins as a sentence does', () => {
  const table = sent('statement: { shows: [not-charged] }\n').tables.find(({ id }) => id === 'not-charged');
  expect(table?.rows.map((cells) => cells.at(-1))).toEqual(['Learning how']);
});
