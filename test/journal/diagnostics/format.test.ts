import { describe, expect, test } from 'vitest';
import { diagnosticsToJson } from '../../../src/journal/diagnostics/as-json.ts';
import { diagnostic, unknownName } from '../../../src/journal/diagnostics/diagnostic.ts';
import { countsText, formatDiagnostic, formatDiagnostics, PLAIN } from '../../../src/journal/diagnostics/format.ts';
import { sourceFrame } from '../../../src/journal/diagnostics/source-frame.ts';
import type { Place } from '../../../src/journal/model.ts';

const NOTE = 'sessions/2031-03-12.md';
const at = (line: number, column: number, endLine: number, endColumn: number): Place => ({ file: NOTE, line, column, endLine, endColumn });
const options = (source: string | null) => ({ paint: PLAIN, sourceOf: () => source, pathOf: (file: string) => `van/${file}` });
const drawn = (source: string, place: Place): string[] => sourceFrame(source, place).map((line) => `${line.gutter}|${line.text}`);

describe('a diagnostic as text', () => {
  test('has the place, the line before, the line with the place underlined, the other place and the repair', () => {
    const source = '---\nparts:\n  - { part: front-drum-neer, did: removed }\n';
    const found = diagnostic('A401', at(3, 13, 3, 28), 'No part `front-drum-neer` is in the catalogue.', {
      hint: 'Did you mean `front-drum-near`?',
      related: [{ place: { file: 'parts/brakes.yaml', line: 1, column: 7, endLine: 1, endColumn: 22 }, message: 'the nearest' }],
    });
    expect(formatDiagnostic(found, options(source))).toBe(
      [
        'van/sessions/2031-03-12.md:3:13  error A401  No part `front-drum-neer` is in the catalogue.',
        '  2 | parts:',
        '  3 |   - { part: front-drum-neer, did: removed }',
        '    |             ^^^^^^^^^^^^^^^',
        '  see van/parts/brakes.yaml:1:7  the nearest',
        '  Did you mean `front-drum-near`?',
      ].join('\n'),
    );
  });

  test('has no frame when the source is not to be had', () => {
    const found = diagnostic('A107', at(1, 1, 1, 1), 'This file cannot be read.');
    expect(formatDiagnostic(found, options(null))).toBe('van/sessions/2031-03-12.md:1:1  error A107  This file cannot be read.');
  });

  test('cannot steer the terminal with what a note says', () => {
    const found = diagnostic('A401', at(1, 1, 1, 3), 'No part `\u001b[2J`.');
    expect(formatDiagnostic(found, options('\u001b[31mred'))).not.toContain('\u001b');
  });

  test('is painted by severity, and the marks are', () => {
    const paint = { ...PLAIN, error: (text: string) => `<${text}>`, warning: (text: string) => `(${text})` };
    const text = formatDiagnostics([diagnostic('A904', at(1, 1, 1, 2), 'm')], { ...options('a'), paint });
    expect(text).toContain('(warning A904)');
    expect(text).toContain('<^>');
  });
});

describe('the frame of a place', () => {
  test('underlines to the end of the first line when the range goes on', () => {
    expect(drawn('ab: [\n1', at(1, 5, 2, 2))).toEqual(['1|ab: [', '|    ^']);
  });

  test('marks one column when the range is empty, even after the end of the line', () => {
    expect(drawn('abc', at(1, 4, 1, 4))).toEqual(['1|abc', '|   ^']);
  });

  test('counts a letter outside the basic plane as one place on the line', () => {
    expect(drawn('\u{1f529}\u{1f529} x', at(1, 6, 1, 7))).toEqual(['1|\u{1f529}\u{1f529} x', '|   ^']);
  });

  test('shows the neighbourhood of a place far along a line', () => {
    const [line, marks] = sourceFrame(`${'a'.repeat(500)}HERE${'b'.repeat(500)}`, at(1, 501, 1, 505));
    expect(line?.text.length).toBeLessThan(120);
    expect(line?.text.slice(marks?.text.indexOf('^'), (marks?.text.lastIndexOf('^') ?? 0) + 1)).toBe('HERE');
  });

  test('is none for a line that the source does not have', () => {
    expect(sourceFrame('one', at(7, 1, 7, 1))).toEqual([]);
    expect(sourceFrame('', at(1, 1, 1, 1))).toEqual([]);
  });

  test('reads every kind of line end', () => {
    expect(drawn('a\r\nb\rc\nd', at(3, 1, 3, 2))).toEqual(['2|b', '3|c', '|^']);
  });
});

test('counts are said in words that fit the number', () => {
  const error = diagnostic('A401', at(1, 1, 1, 1), '');
  const warning = diagnostic('A904', at(1, 1, 1, 1), '');
  expect(countsText([error, error, warning], 48)).toBe('2 errors, 1 warning in 48 notes');
  expect(countsText([], 1)).toBe('no errors, no warnings in 1 note');
});

test('for machines the shape is plain and has a version', () => {
  const found = diagnostic('A601', at(3, 1, 3, 4), 'Bag 4 is used twice.', { related: [{ place: at(1, 1, 1, 2), message: 'first here' }] });
  expect(JSON.parse(JSON.stringify(diagnosticsToJson([found], 2)))).toEqual({
    version: 1,
    notes: 2,
    errors: 1,
    warnings: 0,
    diagnostics: [
      {
        code: 'A601',
        severity: 'error',
        message: 'Bag 4 is used twice.',
        hint: null,
        file: NOTE,
        line: 3,
        column: 1,
        endLine: 3,
        endColumn: 4,
        related: [{ message: 'first here', file: NOTE, line: 1, column: 1, endLine: 1, endColumn: 2 }],
        unknown: null,
      },
    ],
  });
});

test('a name that is not known is told to machines with the one that was meant', () => {
  const message = 'There is no part `frnt-drum`.';
  const found = diagnostic('A401', at(3, 1, 3, 4), message, unknownName('part', 'frnt-drum', ['rear-drum', 'front-drum']));
  expect(found.hint).toBe('Did you mean `front-drum`?');
  expect(diagnosticsToJson([found], 1)).toMatchObject({
    diagnostics: [{ unknown: { sorts: ['part'], name: 'frnt-drum', nearest: 'front-drum' } }],
  });
});
