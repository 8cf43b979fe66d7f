import { expect, it } from 'vitest';
import { excerpt } from '../../../../src/site/views/page/excerpt.ts';

const LONG = 'The first of many words and then a stretch of others until C 4417 under the hub flange and more beyond it to the end';

it('shows the stretch around the word that was asked for, cut at words', () => {
  const shown = excerpt(LONG, ['4417'], 50);
  expect(shown).toMatch(/^… .*4417.* …$/);
  expect(LONG).toContain(shown.slice(2, -2));
});

it('shows the beginning when the word is not in it, and the whole of a short text', () => {
  expect(excerpt(LONG, ['nowhere'], 30)).toMatch(/^The first of many/);
  expect(excerpt('short', ['x'], 30)).toBe('short');
});
