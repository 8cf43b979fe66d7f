import { expect, test } from 'vitest';
import { printedStatement } from '../../src/exports/printed-statement.ts';
import { statementDocument } from '../../src/exports/statement-document.ts';
import { statementSheet } from '../../src/exports/statement-sheet.ts';
import { statementOf } from '../../src/journal/ledger/statement.ts';
import { compileFiles, JOURNAL, NOTE, note } from '../journal/base.ts';

const SHOWING_ALL = 'mark-up: { part: 10% }\nstatement: { shows: [costs, mark-up, not-charged] }\n';
const lines = (n: number, one: (n: number) => string) => Array.from({ length: n }, (_, at) => `  - ${one(at)}`).join('\n');
const bought = (n: number) => `bought:\n${lines(n, (at) => `{ what: Pins and clips ${at}, for: drum, cost: 4.20, tax: 20% }`)}`;
const received = (n: number) => `received:\n${lines(n, (at) => `{ from: the owner, amount: ${at + 1}.00 }`)}`;

function documentOf(settings: string, ...fields: readonly string[]) {
  const { record } = compileFiles({ journal: `${JOURNAL}${settings}`, more: { [NOTE]: note(fields.join('\n')) } });
  if (record === null) throw new Error('the journal does not compile');
  return statementDocument(statementOf(record, '2031-03-01', '2031-03-31'), record.journal);
}

test.each([
  ['without costs', ''],
  ['with costs and mark-up shown', SHOWING_ALL],
])('a month of forty lines is one sheet, %s', (_, settings) => {
  expect(printedStatement(documentOf(settings, bought(40), received(1))).pages).toBe(1);
});

test('what is more than a sheet holds goes on, however much was received', () => {
  expect(printedStatement(documentOf(SHOWING_ALL, bought(150))).pages).toBeGreaterThan(1);
  const payments = documentOf('', bought(1), received(90));
  expect(printedStatement(payments).pages).toBeGreaterThan(1);
  // One table under the other, each of which may go on over the page.
  expect(statementSheet(payments)).not.toContain('column-gutter: 16pt');
  expect(statementSheet(documentOf('', bought(1), received(2)))).toContain('column-gutter: 16pt');
});
