/** What the page on how the record is made says of figures, in copies that have some of them. */
import { expect, test } from 'vitest';
import { copyOf } from '../../../../src/journal/copy/copy.ts';
import type { LeaveOut } from '../../../../src/journal/model.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { accountMeanings } from '../../../../src/site/views/home/account-meanings.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { JOURNAL, journalWith } from '../../../ledger/small-journal.ts';

function meanings(...kinds: LeaveOut[]) {
  const { record } = journalWith({ journal: `${JOURNAL}copies: { copy: { leave-out: [${kinds.join(', ')}] } }\n` });
  const site = { ...copyOf(record, 'copy'), pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' };
  const all = accountMeanings(sheetOf(site, 'about.html'));
  return { titles: all.map(({ title }) => title), text: all.map(({ words }) => words.markup).join(' ') };
}

const ALWAYS = ['What followed a decision', 'The ledger of a past day'];

test('each figure that a copy has is explained, and none that it leaves out', () => {
  expect(meanings().titles).toEqual(['Money', 'Paid, and job cost', 'Consumables', 'Hours and budgets', ...ALWAYS]);
  expect(meanings('hours', 'people').titles).toEqual(['Money', 'Paid, and job cost', 'Consumables', 'Budgets', ...ALWAYS]);
  expect(meanings('money', 'papers').titles).toEqual(['Consumables', 'Hours and budgets', ...ALWAYS]);
  expect(meanings('money', 'hours').titles).toEqual(['Consumables']);
});

test('a copy without hours says that labour is in no sum, and does not reckon it in', () => {
  expect(meanings().text).toContain('Paid, labour and opening stock together equal job cost');
  const { text } = meanings('hours', 'stores');
  expect(text).toContain('labour is in no sum. Paid and opening stock together equal job cost');
  expect(text).toContain('The job cost without labour charged to a position');
  expect(text).not.toMatch(/labour at its rate|[Hh]ours are|The hours/);
});
