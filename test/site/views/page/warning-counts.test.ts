import { expect, test } from 'vitest';
import { diagnostic, startOf } from '../../../../src/journal/diagnostics/diagnostic.ts';
import { warningCounts } from '../../../../src/site/views/page/warning-counts.ts';

test('the record tells how many warnings it has of each sort, and nothing of what they say', () => {
  const warnings = [
    diagnostic('A908', startOf('sessions/a/IMG_0042.jpg'), 'sessions/a/IMG_0042.jpg was taken on 2031-03-01 at 14:05.'),
    diagnostic('A704', startOf('sessions/a/index.md'), 'No reason.'),
    diagnostic('A908', startOf('sessions/b/index.md'), 'sessions/b/IMG_0043.jpg was taken at 15:06.'),
  ];
  expect(warningCounts(warnings)).toEqual([
    { title: 'Decision without a reason', count: 1 },
    { title: 'Picture of another day', count: 2 },
  ]);
});
