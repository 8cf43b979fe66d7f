import { expect, test } from 'vitest';
import { countsInTurn } from '../../../../src/site/views/position/part-page.ts';

test('how many of a lot somebody had is told in turn, each change once', () => {
  expect(countsInTurn([4, 2, 2, 3].map((count) => ({ count })))).toBe('4, then 2, then 3');
  expect(countsInTurn([{ count: 4 }, { count: 4 }])).toBe('4');
  expect(countsInTurn([4, 2, 4].map((count) => ({ count })))).toBe('4, then 2, then 4');
});
