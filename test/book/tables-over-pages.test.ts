/** How tables of the book go over from one page to the next. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { typeset } from '../../src/exports/typeset.ts';

const HEAD = readFileSync(new URL('../../src/book/book.typ', import.meta.url), 'utf8');

/** The pages on which a table begins and ends whose first rows fill most of one, and whose last row is as long as said. */
function pagesOf(before: number, lines: number): readonly [begins: number, ends: number] {
  const rows = Array.from({ length: before }, (_, n) => `[${n}], [row]`).join(', ');
  const long = Array.from({ length: lines }, () => 'eight words of one line in this cell').join(' ');
  const mark = `#context [#metadata(counter(page).get().first()) <cut>]`;
  const table = `#record-table(columns: (30mm, 60mm), head: ([A], [B]), ${rows}, [last], [${mark} ${long} ${mark}])`;
  const [begins, ends] = typeset(`${HEAD}\n#show: setting.with(title: "T")\n${table}`).cut as number[];
  return [begins ?? 0, ends ?? 0];
}

test('a row that has no room goes onto the next page whole', () => {
  for (let before = 38; before < 54; before++) {
    const [begins, ends] = pagesOf(before, 8);
    expect([before, ends]).toEqual([before, begins]);
  }
});

test('a row longer than a page goes over, and nothing of it is cut off', () => {
  const [begins, ends] = pagesOf(30, 200);
  expect(ends).toBeGreaterThan(begins + 1);
});
