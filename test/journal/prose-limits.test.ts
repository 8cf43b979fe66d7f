import { describe, expect, test } from 'vitest';
import { scanProse } from '../../src/journal/read/prose.ts';
import { tooMuchOf } from '../../src/journal/read/prose-limits.ts';
import { sourceText } from '../../src/journal/read/source/text.ts';
import { compileFiles, NOTE, note } from './base.ts';

/** What kept the parser busy, each repeated to fill a note. */
const TANGLED: readonly string[] = [
  '[^1]: ',
  '> ',
  '- ',
  '1. ',
  '> - ',
  '*_',
  '*a **a ',
  '~~a ',
  'a<?',
  'a <!-- ',
  'a<![CDATA[',
  '|a',
  '> a\nb\n',
  '- a\n',
  '# a\n',
  'a<!--',
  '9',
  '}#;]',
  'href="data:',
  '](part:',
  '[x](y) ',
  '|a|\n|-|\n',
];

/** What takes long though no line of it is odd, each so often as would keep the parser for seconds. */
const LONG_IN_ALL: readonly (readonly [what: string, prose: string])[] = [
  ['brackets that close nothing', '] '.repeat(2500)],
  ['footnotes in a footnote', '[^a]: x\n\n    '.repeat(1500)],
  ['lists in one another on every line', `${'- '.repeat(30)}x\n\n`.repeat(1500)],
  ['quotations in one another on every line', `${'> '.repeat(31)}x\n\n`.repeat(1500)],
  ['headings by lines under them', 'x\n===\n\n'.repeat(900)],
  ['headings by hyphens under them', 'x\n---\n\n'.repeat(900)],
  ['words that stand out', `${'*a* '.repeat(30)}\n\n`.repeat(900)],
  ['pictures', `${'![a](b.jpg) '.repeat(30)}\n\n`.repeat(300)],
  ['words behind a bracket that is not closed', `[${'x '.repeat(4000)}`],
  ['lines behind one', `![${'[a](b) and more\n'.repeat(500)}`],
  ['words behind one whose end is no mark', `[ \`]\` ${'x '.repeat(4000)}`],
];

describe('prose that no evening writes is told, and not read', () => {
  test.each(LONG_IN_ALL)('%s', (_, prose) => {
    const { diagnostics, record } = compileFiles({ more: { [NOTE]: note('', prose) } });
    expect(diagnostics.map(({ code }) => code)).toEqual(['A916']);
    expect(record?.journal.sessions[0]?.body).toBe('');
  });

  test.each(TANGLED)('%j without end', (mark) => {
    const prose = mark.repeat(900_000 / mark.length);
    const { diagnostics, record } = compileFiles({ more: { [NOTE]: note('', prose) } });
    expect(diagnostics.map(({ code }) => code)).toEqual(['A916']);
    expect(record?.journal.sessions[0]?.body).toBe('');
    expect(tooMuchOf(mark.repeat(120_000 / mark.length))).not.toBeNull();
  });

  test.each(['1. ', '<!--', '9'])('also in a note without fields, whose title its file then gives: %j', (mark) => {
    const { diagnostics, record } = compileFiles({ more: { [NOTE]: mark.repeat(20_000) } });
    expect(diagnostics.map(({ code }) => code)).toEqual(['A916']);
    expect(record?.journal.sessions[0]?.title).not.toContain(mark);
  });

  test('at the line where it is too much', () => {
    const { diagnostics } = compileFiles({ more: { [NOTE]: note('', `\nOff it came.\n\n${'> '.repeat(40)}\n`) } });
    expect(diagnostics.map(({ code, place }) => [code, place.line])).toEqual([['A916', 9]]);
  });
});

const NOTHING = { links: [], others: [], images: [] };

/** What a pattern would begin anew at each of its marks, for minutes. */
test.each([
  ['brackets that are not closed, and code', '[`x` ', 4000, NOTHING],
  ['ends of links and one mark of code', '](', 150_000, null],
])(
  '%s are looked through once',
  (_, mark, times, found) => {
    const prose = `\`a\` ${mark.repeat(times)}`;
    expect(scanProse(sourceText('n.md', prose), 0, prose)).toEqual(found);
  },
  20_000,
);

test('brackets that are closed may stand in as long a paragraph as there is', () => {
  expect(tooMuchOf('It came off [as told](part:drum) and went\nto [the shelf](bag:4).\n'.repeat(150))).toBeNull();
});

test('a script that has no blanks is read, however long its paragraph', () => {
  const prose = `${'\u{8eca}\u{4f53}\u{3092}\u{5916}\u{3057}\u{305f}\u{3002}'.repeat(2000)}\n`;
  const { diagnostics, record } = compileFiles({ more: { [NOTE]: note('', prose) } });
  expect(diagnostics).toEqual([]);
  expect(record?.journal.sessions[0]?.body).toContain('\u{8eca}');
});

test('a long evening is read as it is', () => {
  const evening = `${'The *drum* came off with **two** pulls; see <b>there</b>.\n'.repeat(60)}\n- a\n  - b\n    > c\n\n| a | b |\n|---|---|\n`;
  expect(tooMuchOf(evening.repeat(12))).toBeNull();
});
