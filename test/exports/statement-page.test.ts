import { expect, test } from 'vitest';
import { statementPage } from '../../src/exports/statement-page.ts';
import { statementOf } from '../../src/journal/ledger/statement.ts';
import { compileFiles, JOURNAL, NOTE, note } from '../journal/base.ts';

function pageOf(fields: string, settings = ''): string {
  const { record, diagnostics } = compileFiles({ journal: `${JOURNAL}${settings}`, more: { [NOTE]: note(fields) } });
  expect(diagnostics).toEqual([]);
  if (record === null) throw new Error('the journal does not compile');
  return statementPage(statementOf(record, '2031-03-01', '2031-03-31'), record.journal.settings);
}

test('a statement charges hours at their rate, parts with their mark-up, and says the tax inside', () => {
  const page = pageOf(
    'hours: [{ by: jm, on: brakes, time: 1h30m }]\nbought: [{ what: Drum skimmed, as: outside-work, for: drum, cost: 60.00, tax: 20% }]',
    'mark-up: { outside-work: 10% }\n',
  );
  // 1.5 h at 28.00 is 42.00; 60.00 with 10 % is 66.00; together 108.00; the tax inside 60.00 at 20 % is 10.00.
  for (const figure of ['£42.00', '£66.00', '£108.00', '£10.00', '£28.00 an hour']) expect(page).toContain(figure);
});

test('what a note says is text on the page, never markup', () => {
  const page = pageOf('bought: [{ what: "<script>alert(1)</script>", as: part, for: drum, cost: 1.00 }]');
  expect(page).not.toContain('<script>');
  expect(page).toContain('&#60;script&#62;');
});

test('a time without work says so', () => {
  expect(pageOf('private: nothing')).toContain('No entry of the ledger is of these days.');
});
