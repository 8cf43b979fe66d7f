/** The saving must not show: the constructs that a note's letters call for give what all of them would. */
import commonmark from 'commonmark-spec';
import fc from 'fast-check';
import rehypeStringify from 'rehype-stringify';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { expect, test } from 'vitest';
import { ALL_CONSTRUCTS, constructsIn, gfmConstructs } from '../../src/markdown/gfm-as-needed.ts';

const html = (markdown: string, bits: number): string =>
  String(unified().use(remarkParse).use(gfmConstructs, bits).use(remarkRehype).use(rehypeStringify).processSync(markdown));

const same = (markdown: string): void => {
  expect(html(markdown, constructsIn(markdown)), markdown).toBe(html(markdown, ALL_CONSTRUCTS));
};

test('on every example of the CommonMark specification', () => {
  for (const { markdown } of commonmark.tests) same(markdown.replaceAll('→', '\t'));
});

test.each([
  'a\n:-',
  'a\n-:\nb',
  '&#119;ww.a.cc',
  'a&#64;b.cc',
  'htt&#112;://a.cc',
  '~~a~~',
  '*~*a',
  'a[^b]\n\n[^b]: c',
  '- [x] a',
  '- [\t] a',
])('on %j, which only just needs one', (markdown) => {
  expect(html(markdown, ALL_CONSTRUCTS)).not.toBe(html(markdown, 0));
  same(markdown);
});

test('on text made of the letters that the constructs are made of', () => {
  const piece = fc.constantFrom(
    ...[
      '|',
      '-',
      ':',
      ':-',
      '\n',
      '\n\n',
      '~',
      '~~',
      '[',
      ']',
      '^',
      '[^a]',
      '[^a]: x',
      '[x]',
      '- [ ] ',
      '@',
      'a@b.cc',
      'www.a.cc',
      'http://',
    ],
    ...['HTTPS://a.cc', '&#119;', '&#124;', 'a', 'b ', '\\', '*', '`', '(', ')', '> ', '1. ', '# ', '\t'],
  );
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 14 }), (pieces) => same(pieces.join(''))),
    { numRuns: 2000 },
  );
});
