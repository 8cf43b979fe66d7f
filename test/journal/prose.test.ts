import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseProse, scanProse } from '../../src/journal/read/prose.ts';
import { sourceText } from '../../src/journal/read/source/text.ts';

const word = fc.constantFrom(
  'the drum',
  'came',
  'off',
  '10:30',
  '50:1',
  'with *care*',
  'and **then**',
  'a (bore) here',
  '5/16',
  '[',
  ']',
  '(',
  ')',
  '!',
);
const link = fc.constantFrom(
  '[the drum](part:drum)',
  '[bag](bag:14)',
  '[it](item:bleed)',
  '[then](session:2031-03-12)',
  '[fluid](consumable:fluid)',
  '[away](https://example.org/a)',
  '![As found](drum.jpg)',
  '![](drum.jpg "Scored")',
  '[two *words*](part:studs)',
);
const mark = fc.constantFrom(
  '`[code](part:x)`',
  '`one`',
  '`',
  '``',
  '[the `drum`](part:drum)',
  '![of `it`](it.jpg)',
  '![of\n`it`](it.jpg)',
  '[a](b`c`d)',
  '\\[not](part:x)',
  '<part:drum>',
  '    [indented](part:x)',
  '```\n[fenced](part:x)\n```',
  '- an item',
  '> quoted',
  '# Heading',
  '[ref]: part:drum',
  '[ref]',
  'www.example.org',
  'rh@example.org',
  '~~gone~~',
  '\n\n| a | [b](part:b) |\n|---|---|\n| [c](part:c) | d |\n\n',
  'a[^1]',
  '\n\n[^1]: see [the drum](part:drum)',
  '<a href="part:drum">',
);
const gap = fc.constantFrom(' ', '\n', '\n\n', '\n \n');
const prose = fc
  .array(fc.tuple(fc.oneof({ weight: 4, arbitrary: word }, { weight: 4, arbitrary: link }, { weight: 1, arbitrary: mark }), gap), {
    maxLength: 14,
  })
  .map((pieces) => pieces.flat().join(''));

test('what the scanner takes on, a full CommonMark parse reads the same', () => {
  let scanned = 0;
  fc.assert(
    fc.property(prose, (text) => {
      const source = sourceText('note.md', text);
      const quick = scanProse(source, 0, text);
      if (quick === null) return;
      scanned += 1;
      const exact = parseProse(source, 0, text);
      const inTurn = (list: readonly { paragraph: number }[]) => list.map((each, i) => i > 0 && each.paragraph === list[i - 1]?.paragraph);
      const bare = (list: readonly { paragraph: number }[]) => list.map(({ paragraph: _, ...rest }) => rest);
      expect(bare(quick.links)).toEqual(bare(exact.links));
      expect(quick.others).toEqual(exact.others);
      expect(bare(quick.images)).toEqual(bare(exact.images));
      if (quick.images.length > 0) expect(inTurn(quick.images)).toEqual(inTurn(exact.images));
    }),
    { numRuns: 4000 },
  );
  expect(scanned).toBeGreaterThan(200);
});

test('a link inside code is text', () => {
  const text = 'Type `[x](part:y)` to link.';
  expect(parseProse(sourceText('n.md', text), 0, text)).toEqual({ links: [], others: [], images: [] });
});

test('a link by reference counts', () => {
  const text = 'See [the drum][d].\n\n[d]: part:drum\n';
  expect(parseProse(sourceText('n.md', text), 0, text).links.map((each) => each.id)).toEqual(['drum']);
});

test('a link that is escaped is text, and one that a space breaks was meant', () => {
  const text = 'Not \\[a link](part:drum), but [the drum](part: drum).\n';
  expect(parseProse(sourceText('n.md', text), 0, text).others.map(({ url }) => url)).toEqual(['part: drum']);
});

test('a link written as HTML counts', () => {
  const text = `See <a title="a > b" href='part:drum'>it</a> and\n\n<div><A HREF=bag:014>bag</A></div>\n`;
  const { links } = parseProse(sourceText('n.md', text), 0, text);
  expect(links.map(({ scheme, id }) => [scheme, id])).toEqual([
    ['part', 'drum'],
    ['bag', '14'],
  ]);
});
