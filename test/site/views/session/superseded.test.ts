import { expect, test } from 'vitest';
import { eventsOfPosition } from '../../../../src/journal/timelines/timelines.ts';
import { NO_PICTURES } from '../../../../src/photos/plan.ts';
import { sheetOf } from '../../../../src/site/views/page/sheet.ts';
import { chronicleOf } from '../../../../src/site/views/position/chronicle.ts';
import { supersededBy } from '../../../../src/site/views/session/session-page.ts';
import { decide, evening, part, soundRecord } from '../../../builders/journal.ts';

test('a verdict on a spare that never stood there is superseded by none on the place, and is told of by its name', () => {
  const record = soundRecord({
    parts: [part('handle'), part('handle-spare', { for: 'handle', name: 'Handle, spare', store: 'loft' })],
    evenings: [
      evening('2030-10-01', { decisions: [decide('handle-spare', 'omit')] }),
      evening('2030-10-02', { decisions: [decide('handle', 'refinish')] }),
      evening('2030-10-03', { decisions: [decide('handle', 'repair')] }),
    ],
  });
  const sheet = sheetOf({ ...record, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') }, 'parts/handle.html');
  const decisions = record.journal.sessions.flatMap((session) => session.decisions);
  expect(decisions.map((one) => supersededBy(sheet, one).map(({ decision }) => decision.verdict))).toEqual([[], ['repair'], []]);
  const [first] = chronicleOf(sheet, eventsOfPosition(record, 'handle'));
  expect(first?.lines.map((line) => line.markup.replace(/<[^>]*>/g, ''))).toEqual([
    expect.stringMatching(/^Decided, Handle, spare: leave off/),
  ]);
});

test('a verdict on some of a lot is superseded by those alone that decide again on the same, and told of how many', () => {
  const record = soundRecord({
    parts: [part('leaves', { count: 5, numbered: 'I to V, from above' })],
    evenings: [
      evening('2030-10-01', {
        decisions: [decide('leaves', 'replace', { which: [2, 4], because: 'cracked' }), decide('leaves', 'keep', { which: [1, 3, 5] })],
      }),
      evening('2030-10-02', { decisions: [decide('leaves', 'repair', { which: [1] })] }),
    ],
  });
  const sheet = sheetOf({ ...record, pictures: NO_PICTURES, warnings: [], noteHtml: () => Promise.resolve('') }, 'sessions.html');
  const decisions = record.journal.sessions.flatMap((session) => session.decisions);
  const told = decisions.map((one) => supersededBy(sheet, one).map(({ decision, count }) => [decision.verdict, count]));
  expect(told).toEqual([[], [['repair', 1]], []]);
});
