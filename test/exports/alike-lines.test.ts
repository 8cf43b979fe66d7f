/** What a client reads twice in the same words is told once, with how many it is. */
import { expect, test } from 'vitest';
import { statementDocument } from '../../src/exports/statement-document.ts';
import { statementOf } from '../../src/journal/ledger/statement.ts';
import { journal } from '../ledger/small-journal.ts';

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
