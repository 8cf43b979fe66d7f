import { expect, test } from 'vitest';
import { compileFiles, JOURNAL, NOTE, note } from './base.ts';

/** The same word in one form of Unicode and in the other: e with its accent as one character, and as two. */
const [ONE, TWO] = ['\u00e9tag\u00e8re', 'e\u0301tage\u0300re'];

test.each([
  [ONE, TWO],
  [TWO, ONE],
])('a file is found whichever way its letters are typed and stored: %j, %j', (typed, stored) => {
  const path = `sessions/2031-03-12-brakes/${stored}.jpg`;
  const { diagnostics, record } = compileFiles({
    more: { [NOTE]: note(`pictures: [{ file: ${typed}.jpg, caption: A }]`, `![b](${encodeURI(typed)}.jpg) and [it](${typed}.jpg).`) },
    assets: [path],
  });
  expect(diagnostics).toEqual([]);
  expect(record?.journal.sessions[0]?.pictures.map(({ file }) => file)).toEqual([path]);
});

test('a place in the stores is one, whichever way it is typed', () => {
  const { diagnostics } = compileFiles({
    journal: JOURNAL.replace('shelf B2]', `shelf B2, ${ONE}]`),
    more: { [NOTE]: note(`parts: [{ part: drum, did: removed, to: ${TWO} }]`) },
  });
  expect(diagnostics.map(({ code }) => code)).toEqual([]);
});
