import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cutFrontMatter } from '../../src/journal/read/source/front-matter.ts';
import { quickTree } from '../../src/journal/read/source/quick-yaml.ts';
import { decode, sourceText } from '../../src/journal/read/source/text.ts';
import type { Path, Tree, Value } from '../../src/journal/read/source/tree.ts';
import { readYaml } from '../../src/journal/read/source/yaml.ts';
import { loadJournal } from '../../src/load/load.ts';

const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

const piece = fc.constantFrom(
  'a',
  'b',
  ': ',
  ':',
  ' ',
  '\n',
  '\n  ',
  '- ',
  '- { ',
  ' }',
  '[',
  ']',
  ', ',
  '"',
  "'",
  '#',
  ' # c',
  '>',
  '|',
  '2031-03-12',
  'x',
  '~',
  'null',
  '\\',
  '%',
  '@',
  '?',
  '? ',
  '\r\n',
);
const yaml = fc.array(piece, { minLength: 1, maxLength: 24 }).map((pieces) => `k: ${pieces.join('')}`);

/** Every path into a value, the empty one first. */
function pathsInto(value: Value, path: Path = []): Path[] {
  if (typeof value === 'string') return [path];
  return [path, ...Object.entries(value).flatMap(([key, held]) => pathsInto(held, [...path, Array.isArray(value) ? Number(key) : key]))];
}

/** Values, and the places of each and of each key. */
const all = (tree: Tree): unknown => ({
  value: plain(tree.value),
  places: pathsInto(tree.value).map((path) => [path.join('.'), tree.placeOf(path), tree.keyPlaceOf(path), tree.placeOf([...path, 'none'])]),
});

test('what the fast reader takes, the exact reader reads the same, places too, without a complaint', () => {
  let taken = 0;
  fc.assert(
    fc.property(yaml, (text) => {
      const source = sourceText('n.md', text);
      const quick = quickTree(source, 0, text.length, 'fields');
      if (quick === null) return;
      taken += 1;
      const { tree, diagnostics } = readYaml(source, 0, text.length);
      expect(diagnostics).toEqual([]);
      expect(all(quick)).toEqual(tree && all(tree));
    }),
    { numRuns: 4000 },
  );
  expect(taken).toBeGreaterThan(300);
});

test('the demo is read the same by both, places too', () => {
  const files = loadJournal(fileURLToPath(new URL('../../content', import.meta.url))).files.filter((file) => file.path.endsWith('.md'));
  let taken = 0;
  for (const file of files) {
    const { text } = decode(file);
    const cut = text && cutFrontMatter(text).cut;
    if (!text || !cut) continue;
    const quick = quickTree(text, cut.yaml.start, cut.yaml.end, 'fields');
    const exact = readYaml(text, cut.yaml.start, cut.yaml.end).tree;
    if (!quick || !exact) continue;
    taken += 1;
    expect(all(quick)).toEqual(all(exact));
  }
  expect(taken).toBeGreaterThan(files.length / 2);
});
