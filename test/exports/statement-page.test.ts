import { parseHTML } from 'linkedom';
import { expect, test } from 'vitest';
import { statementDocument } from '../../src/exports/statement-document.ts';
import { statementPage } from '../../src/exports/statement-page.ts';
import { copyOf } from '../../src/journal/copy/copy.ts';
import { statementOf } from '../../src/journal/ledger/statement.ts';
import type { JournalRecord } from '../../src/journal/record.ts';
import { compileFiles, JOURNAL, NOTE, note } from '../journal/base.ts';

function pageOf(fields: string, settings = ''): string {
  const { record, diagnostics } = compileFiles({ journal: `${JOURNAL}${settings}`, more: { [NOTE]: note(fields) } });
  expect(diagnostics).toEqual([]);
  if (record === null) throw new Error('the journal does not compile');
  return statementPage(statementDocument(statementOf(record, '2031-03-01', '2031-03-31'), record.journal));
}

const LINES =
  'hours: [{ by: jm, on: brakes, time: 1h30m }]\nbought: [{ what: Drum skimmed, as: outside-work, for: drum, cost: 60.00, tax: 20% }]';

test('a statement charges hours at their rate and parts with their mark-up on the net', () => {
  const page = pageOf(LINES, 'mark-up: { outside-work: 10% }\n');
  // 1.5 h at 28.00 is 42.00; 60.00 with 20 % inside is 50.00 net, and 10 % of that 5.00; together 107.00.
  for (const figure of ['£42.00', '£65.00', '£107.00', '£28.00 an hour']) expect(page).toContain(figure);
  // What was paid, the mark-up and the tax inside are the workshop's own.
  for (const figure of ['£60.00', '£5.00', '£10.00', 'Mark-up', 'Cost<']) expect(page).not.toContain(figure);
});

test('costs, mark-up and what is not charged are shown where that is wanted', () => {
  const more = 'mark-up: { outside-work: 10% }\nstatement: { shows: [costs, mark-up, not-charged] }\n';
  const mistake =
    'bought: [{ what: Drum skimmed, as: outside-work, for: drum, cost: 60.00, tax: 20% }, { what: Broken pin, for: drum, cost: 3.33, not-charged: my own mistake }]';
  const page = pageOf(mistake, more);
  for (const words of ['£60.00', '£5.00', '£10.00', 'Mark-up', 'My own mistake']) expect(page).toContain(words);
  expect(pageOf(mistake)).not.toMatch(/my own mistake/i);
  expect(pageOf(mistake)).not.toContain('£3.33');
});

test('a workshop that is registered charges net and its own tax on labour, materials and mark-up', () => {
  const page = pageOf(
    LINES,
    'mark-up: { outside-work: 10% }\nworkshop: { name: The workshop, tax-number: GB 000, tax: 20% }\nclient: { name: The owner, terms: 30 days, reference: Van 7 }\n',
  );
  // 42.00 + 8.40; 50.00 + 5.00, and 11.00 on both; together 97.00 + 19.40.
  for (const figure of ['£50.40', '£55.00', '£11.00', '£66.00', '£97.00', '£19.40', '£116.40']) expect(page).toContain(figure);
  for (const words of ['At 20 %', 'GB 000', 'The workshop', 'The owner', '30 days', 'Van 7']) expect(page).toContain(words);
  expect(page).not.toContain('no tax invoice');
});

test('money received is on it, and what is left to pay; of what was never sent nothing is told since when it is owed', () => {
  const page = pageOf(`${LINES}\nreceived: [{ from: the owner, amount: 100.00, for: deposit }]`);
  for (const words of ['the owner, deposit', '£100.00', '£2.00', 'To pay']) expect(page).toContain(words);
  expect(page).not.toContain('the oldest since');
});

test('what it names is named as the client knows it: days, people and subsystems', () => {
  const page = pageOf('hours: [{ by: jm, on: brakes, time: 1h30m }]');
  for (const words of ['Statement, 1 Mar 2031 to 31 Mar 2031', '12 Mar 2031', 'Jory: Front brakes<', '>Brakes<', '1 h 30 min']) {
    expect(page).toContain(words);
  }
  expect(pageOf('hours: [{ by: jm, on: brakes, time: 19:10-20:40 }]')).toContain('Jory: Front brakes, 19:10–20:40<');
});

test.each([
  ['14 days', '14 Apr 2031'],
  ['Net 30 days', '30 Apr 2031'],
  ['within 7 days of the statement', '7 Apr 2031'],
  ['14 days after their meeting', null],
  ['Within the month', null],
])('terms of %s give the day to pay by: %s', (terms, due) => {
  const page = pageOf(LINES, `client: { name: The owner, terms: ${terms} }\n`);
  if (due === null) expect(page).not.toContain('To pay by');
  else expect(page).toContain(`<dt>To pay by</dt><dd>${due}</dd>`);
  // Where nothing is owed there is nothing to pay.
  expect(pageOf('private: nothing', `client: { name: The owner, terms: ${terms} }\n`)).not.toContain('To pay by');
});

test('the amounts of every table add up to the line under it, and those of the kinds to what is charged', () => {
  const page = pageOf(
    [
      'hours: [{ by: jm, on: brakes, time: 1h30m }, { by: rh, on: frame, time: 2h }, { by: jm, on: frame, time: 50m }]',
      'bought: [{ what: Drum skimmed, as: outside-work, for: drum, cost: 60.05, tax: 20% }, { what: Pin, for: drum, cost: 0.55, tax: 5% on top }]',
      'sold: [{ what: Lamps, on: frame, price: 7.00 }]',
    ].join('\n'),
    'mark-up: { outside-work: 10%, part: 15% }\n',
  );
  const { document } = parseHTML(page);
  const pence = (cell: Element | null | undefined) =>
    Math.round(Number((cell?.textContent ?? '').replace('−', '-').replaceAll(/[^\d.-]/g, '')) * 100);
  const titled = [...document.querySelectorAll('h2')].map((title) => [title.textContent, title.nextElementSibling] as const);
  const last = (row: Element | null | undefined) => pence(row?.lastElementChild);
  const kinds = titled.filter(([title]) => ['Labour', 'Parts', 'Outside work', 'Sold, set against the cost'].includes(title ?? ''));
  expect(kinds).toHaveLength(4);
  for (const [, table] of kinds) {
    const sum = [...(table?.querySelectorAll('tbody tr') ?? [])].reduce((all, row) => all + last(row), 0);
    expect(sum).toBe(last(table?.querySelector('tfoot tr')));
  }
  const together = titled.find(([title]) => title === 'Together')?.[1];
  const charged = kinds.reduce((all, [, table]) => all + last(table?.querySelector('tfoot tr')), 0);
  expect(charged).toBe(last(together?.querySelector('tfoot tr')));
});

test('what a note says is text on the page, never markup', () => {
  const page = pageOf('bought: [{ what: "<script>alert(1)</script>", as: part, for: drum, cost: 1.00 }]');
  expect(page).not.toContain('<script>');
  expect(page).toContain('&#60;script&#62;');
});

test('a time without work says so', () => {
  expect(pageOf('private: nothing')).toContain('Nothing of these days is charged on this statement.');
});

test('where nobody is named no table of rates tells people apart', () => {
  const PEOPLE = `${JOURNAL}copies: { club: { leave-out: [people] } }\n`.replace('rate: 0', 'rate: 20.00');
  const fields = 'hours: [{ by: rh, on: brakes, time: 2h }, { by: jm, on: brakes, time: 1h30m }]';
  const { record } = compileFiles({ journal: PEOPLE, more: { [NOTE]: note(fields) } });
  if (record === null) throw new Error('the journal does not compile');
  const tableOf = (of: JournalRecord, table: string) =>
    statementDocument(statementOf(of, '2031-03-01', '2031-03-31'), of.journal).tables.find(({ id }) => id === table);
  expect(tableOf(record, 'hours')?.rows.map(([person, rate]) => [person, rate])).toEqual([
    ['Ruth', '£20.00 an hour'],
    ['Jory', '£28.00 an hour'],
  ]);
  // 2 h at 20.00 and 1.5 h at 28.00, as one sum with the work.
  expect(tableOf(copyOf(record, 'club'), 'hours')).toBeUndefined();
  expect(tableOf(copyOf(record, 'club'), 'labour')?.foot).toEqual(['', 'Sum', '', '3 h 30 min', '£82.00']);
});
