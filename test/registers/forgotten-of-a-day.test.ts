/** What was forgotten by a past day is told by the notes of that day. */
import { expect, test } from 'vitest';
import type { JournalRecord } from '../../src/journal/record.ts';
import { forgottenAt } from '../../src/journal/registers/forgotten/forgotten.ts';
import { compileFiles } from '../journal/base.ts';

const on = (date: string, fields: string): string => `---\ndate: ${date}\ntitle: Evening\n${fields}\n---\n`;

test('a receipt that only a later bill names was the likeliest paper of a bill before it', () => {
  const { record } = compileFiles({
    more: {
      'sessions/2031-02-01-one.md': on(
        '2031-02-01',
        'papers: [{ paper: a.pdf, kind: receipt }]\nbought: [{ what: Hose, as: part, for: brakes, cost: 5.00 }]',
      ),
      'sessions/2031-02-08-two.md': on('2031-02-08', 'bought: [{ what: Pipe, as: part, for: brakes, cost: 6.00, paper: a.pdf }]'),
    },
    assets: ['papers/a.pdf'],
  }) as { record: JournalRecord };
  const advice = (day: string) =>
    forgottenAt(record, day)
      .flatMap(({ kind, missed }) => (kind === 'bills' ? missed : []))
      .map(({ write }) => write);
  expect(advice('2031-02-01')).toEqual(['paper: a.pdf']);
  expect(advice('2031-02-08')).toEqual(['paper: …']);
});
