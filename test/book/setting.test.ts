/** What the typesetter makes of the book's own functions, as it measures it. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { typeset } from '../../src/exports/typeset.ts';

const BOOK = readFileSync(new URL('../../src/book/book.typ', import.meta.url), 'utf8');

test('a part that is noted for the index within a sentence takes no room there', () => {
  const width = (words: string): string => `measure([${words}]).width / 1pt`;
  const [measured] = typeset(
    `${BOOK}\n#context [#metadata((${width('#"by it lay "#mention("hose")#"the hose"')}, ${width('#"by it lay the hose"')})) <cut>]`,
  ).cut as readonly (readonly [number, number])[];
  expect(measured?.[1]).toBeGreaterThan(20);
  expect(measured?.[0]).toBeCloseTo(measured?.[1] ?? 0, 3);
});
