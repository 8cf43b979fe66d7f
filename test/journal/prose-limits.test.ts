import { describe, expect, test } from 'vitest';
import { tooMuchOf } from '../../src/journal/read/prose-limits.ts';
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

describe('prose that no evening writes is told, and not read', () => {
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
