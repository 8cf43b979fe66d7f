import { parseHTML } from 'linkedom';
import { expect, test } from 'vitest';
import { statementPage } from '../../src/exports/statement-page.ts';
import { statementOf } from '../../src/journal/ledger/statement.ts';
import { compileFiles, JOURNAL, NOTE, note } from '../journal/base.ts';

function pageOf(fields: string, settings = ''): string {
  const { record, diagnostics } = compileFiles({ journal: `${JOURNAL}${settings}`, more: { [NOTE]: note(fields) } });
  expect(diagnostics).toEqual([]);
  if (record === null) throw new Error('the journal does not compile');
  return statementPage(statementOf(record, '2031-03-01', '2031-03-31'), record.journal);
}

test('a statement charges hours at their rate, parts with their mark-up, and says the tax inside', () => {
  const page = pageOf(
    'hours: [{ by: jm, on: brakes, time: 1h30m }]\nbought: [{ what: Drum skimmed, as: outside-work, for: drum, cost: 60.00, tax: 20% }]',
    'mark-up: { outside-work: 10% }\n',
  );
  // 1.5 h at 28.00 is 42.00; 60.00 with 10 % is 66.00; together 108.00; the tax inside 60.00 at 20 % is 10.00.
  for (const figure of ['£42.00', '£66.00', '£108.00', '£10.00', '£28.00 an hour']) expect(page).toContain(figure);
});

test('what it names is named as the client knows it: days, people and subsystems', () => {
  const page = pageOf('hours: [{ by: jm, on: brakes, time: 1h30m }]');
  for (const words of ['Statement, 1 Mar 2031 to 31 Mar 2031', '12 Mar 2031', 'Jory: Work<', '>Brakes<', '1 h 30 min']) {
    expect(page).toContain(words);
  }
  expect(pageOf('hours: [{ by: jm, on: brakes, time: 19:10-20:40 }]')).toContain('Jory: Work, 19:10–20:40<');
});

test('the amounts of every table add up to the line under it, and those to what is to pay', () => {
  const page = pageOf(
    [
      'hours: [{ by: jm, on: brakes, time: 1h30m }, { by: rh, on: frame, time: 2h }, { by: jm, on: frame, time: 50m }]',
      'bought: [{ what: Drum skimmed, as: outside-work, for: drum, cost: 60.05, tax: 20% }, { what: Pin, for: drum, cost: 0.55, tax: 5% on top }]',
      'sold: [{ what: Lamps, on: frame, price: 7.00 }]',
    ].join('\n'),
    'mark-up: { outside-work: 10%, part: 15% }\n',
  );
  const { document } = parseHTML(page);
  const pence = (cell: Element | null | undefined) => Math.round(Number((cell?.textContent ?? '').replaceAll(/[^\d.-]/g, '')) * 100);
  const tables = [...document.querySelectorAll('table')].filter((each) => each.querySelector('tfoot') !== null);
  const last = (row: Element | null) => pence(row?.lastElementChild);
  for (const each of tables.slice(0, -1)) {
    const sum = [...each.querySelectorAll('tbody tr')].reduce((all, row) => all + last(row), 0);
    expect(sum).toBe(last(each.querySelector('tfoot tr')));
  }
  // The first table tells the hours by rate once more.
  const groups = tables.slice(1, -1).map((each) => last(each.querySelector('tfoot tr')));
  expect(groups.reduce((all, one) => all + one, 0)).toBe(last(tables.at(-1)?.querySelector('tfoot tr') ?? null));
  expect(groups).toHaveLength(4);
});

test('what a note says is text on the page, never markup', () => {
  const page = pageOf('bought: [{ what: "<script>alert(1)</script>", as: part, for: drum, cost: 1.00 }]');
  expect(page).not.toContain('<script>');
  expect(page).toContain('&#60;script&#62;');
});

test('a time without work says so', () => {
  expect(pageOf('private: nothing')).toContain('No entry of the ledger is of these days.');
});
