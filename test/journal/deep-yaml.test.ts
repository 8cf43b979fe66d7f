/** YAML that is nested without end: one message at once, whoever reads it. */
import { describe, expect, test } from 'vitest';
import { cursorIn } from '../../src/editor/answers/cursor.ts';
import { keepersNotes, NotCleaned } from '../../src/exports/keepers-notes.ts';
import { parsedYaml, tooDeepAt } from '../../src/journal/read/source/parsed-yaml.ts';
import { MOST_NESTED } from '../../src/journal/read/source/tree.ts';
import { sessionSchema } from '../../src/journal/schema/session.ts';
import { formOf } from '../../src/write/form.ts';
import { readNote } from '../../src/write/note-text.ts';
import { problemsByField } from '../../src/write/problems.ts';
import { compileFiles, NOTE } from './base.ts';

const OFTEN = 3500;
const steps = (step: (n: number) => string): string => Array.from({ length: 1200 }, (_, n) => step(n)).join('\n');

const DEEP: Readonly<Record<string, string>> = {
  'brackets that are closed': `used: ${'['.repeat(OFTEN)}${']'.repeat(OFTEN)}`,
  'brackets that are not': `used: ${'['.repeat(OFTEN)}`,
  'braces as names': `used: ${'{'.repeat(OFTEN)}${'}'.repeat(OFTEN)}`,
  'braces with names': `used: ${'{ on: '.repeat(OFTEN)}drum${' }'.repeat(OFTEN)}`,
  'brackets with names': `used: ${'[a: '.repeat(OFTEN)}`,
  'names and brackets': 'used: ['.repeat(OFTEN),
  'fields on one line': `${'on: '.repeat(OFTEN)}drum`,
  'names asked for': `${'? '.repeat(OFTEN)}drum`,
  'names and values asked for': `${'? on: '.repeat(OFTEN)}drum`,
  'fields in steps': steps((n) => `${' '.repeat(n)}on:`),
  'lists in steps': steps((n) => `${' '.repeat(n)}-`),
  'lists and fields in steps': Array.from({ length: 400 }, (_, n) => `${'  '.repeat(n)}on:\n${'  '.repeat(n)}- on:`).join('\n'),
  'a slip before it': `title: one: two\nused: ${'['.repeat(OFTEN)}${']'.repeat(OFTEN)}`,
  'a slip behind it': `used: ${'['.repeat(OFTEN)}${']'.repeat(OFTEN - 1)}`,
};
const noteOf = (yaml: string): string => `---\ndate: 2031-03-12\ntitle: Deep\n${yaml}\n---\n`;
const PARSING = { schema: 'failsafe', logLevel: 'silent' } as const;

describe.each(Object.entries(DEEP))('%s', (_, yaml) => {
  test('is told once, in a note and in a catalogue', () => {
    const told = [compileFiles({ more: { [NOTE]: noteOf(yaml) } }), compileFiles({ parts: `${yaml}\n` })];
    for (const { diagnostics } of told) {
      const codes = diagnostics.filter(({ code }) => code.startsWith('A2')).map(({ code, message }) => `${code} ${message}`);
      expect(codes).toEqual(['A201 The YAML is nested more than 64 deep, which no file of a journal is.']);
    }
  });

  test('is not read further than to where it goes too deep', () => {
    const document = parsedYaml(noteOf(yaml).replaceAll('---\n', ''), PARSING);
    expect([document.contents, document.errors.length]).toEqual([null, 1]);
    expect(tooDeepAt(document)).toBeLessThan(20_000);
  });
});

describe('what else reads YAML does without it', () => {
  const text = noteOf(DEEP['brackets that are closed'] ?? '');
  const form = formOf(sessionSchema);

  test('the form of a note', () => {
    expect(readNote(text, 'sessions/2031-03-12-deep.md', form)).toBeNull();
  });

  test('faults by their fields', () => {
    const { diagnostics } = compileFiles({ more: { [NOTE]: text } });
    expect(problemsByField({ diagnostics, unplaced: [] }, NOTE, text, form).map(({ code, way }) => [code, way])).toEqual([['A201', []]]);
  });

  test('completing', () => {
    const at = text.indexOf(']');
    expect(cursorIn(text, [4, text.length], at)).toBeNull();
  });

  test('the notes for the next keeper', () => {
    const { record } = compileFiles({ more: { [NOTE]: noteOf('private: a secret') } });
    if (record === null) throw new Error('the journal of the test does not compile');
    const { journal } = record;
    const copy = { ...journal, sessions: journal.sessions.map((session) => ({ ...session, private: null })) };
    expect(() => keepersNotes([{ path: NOTE, text }], journal, copy)).toThrow(NotCleaned);
  });
});

test('what is as deep as is allowed is read', () => {
  const nested = (depth: number): string => `${'['.repeat(depth)}x${']'.repeat(depth)}`;
  expect(tooDeepAt(parsedYaml(nested(MOST_NESTED), PARSING))).toBeNull();
  expect(tooDeepAt(parsedYaml(nested(MOST_NESTED + 1), PARSING))).toBe(MOST_NESTED);
});
