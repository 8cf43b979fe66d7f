/** What the front page says of money ahead, in copies that leave out some of what it is reckoned from. */
import { expect, test } from 'vitest';
import { copyOf } from '../../../../src/journal/copy/copy.ts';
import type { LeaveOut } from '../../../../src/journal/model.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { moneyAhead } from '../../../../src/site/views/home/money-ahead.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { JOURNAL, journalWith } from '../../../ledger/small-journal.ts';

test('a copy without hours does not say of what has hours that it has no figure', () => {
  const opens =
    'opens: [{ id: bleed, kind: task, what: Bleed, on: brakes, hours: 2h }, { id: pin, kind: buy, what: A pin, on: brakes }, { id: clip, kind: task, what: Clip, on: brakes }]';
  const ahead = (...kinds: LeaveOut[]) => {
    const journal = `${JOURNAL}copies: { copy: { leave-out: [${kinds.join(', ')}] } }\n`;
    const { record, problems } = journalWith({ journal }, ['2031-03-01', `bought: [{ what: A hose, for: drum, cost: 84.00 }]\n${opens}`]);
    expect(problems).toEqual([]);
    const site = { ...copyOf(record, 'copy'), pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' };
    return moneyAhead(sheetOf(site, 'index.html'))?.unsaid;
  };
  expect(ahead()).toBe('Two open items have no figure yet.');
  expect(ahead('hours', 'people')).toBe('One open item has no price yet.');
});
