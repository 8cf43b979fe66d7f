import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { cutFrontMatter } from '../../src/journal/source/front-matter.ts';
import { quickTree, quickValue } from '../../src/journal/source/quick-yaml.ts';
import { decode, sourceText } from '../../src/journal/source/text.ts';
import { readYaml } from '../../src/journal/source/yaml.ts';
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

test('what the fast reader takes, the exact reader reads the same, without a complaint', () => {
  let taken = 0;
  fc.assert(
    fc.property(yaml, (text) => {
      const value = quickValue(text);
      if (value === null) return;
      taken += 1;
      const { tree, diagnostics } = readYaml(sourceText('n.md', text), 0, text.length);
      expect(diagnostics).toEqual([]);
      expect(plain(tree?.value)).toEqual(plain(value));
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
    const cut = text && cutFrontMatter(text);
    if (!text || !cut || 'code' in cut) continue;
    const quick = quickTree(text, cut.yaml.start, cut.yaml.end, 'fields');
    const exact = readYaml(text, cut.yaml.start, cut.yaml.end).tree;
    if (!quick || !exact) continue;
    taken += 1;
    expect(plain(quick.value)).toEqual(plain(exact.value));
    expect({ ...quick.placeOf(['title']) }).toEqual({ ...exact.placeOf(['title']) });
  }
  expect(taken).toBeGreaterThan(files.length / 2);
});
