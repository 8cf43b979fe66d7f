import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { compileJournal } from '../../src/journal/pipeline.ts';
import { generateJournal, LAST_DAY } from './generate.ts';
import { randomFrom } from './random.ts';

const notesOf = (journal: ReadonlyMap<string, string>) => [...journal].filter(([path]) => path.startsWith('sessions/'));

function compiled(journal: ReadonlyMap<string, string>) {
  const files = [...journal].map(([path, text]) => ({ path, bytes: Buffer.from(text) }));
  return compileJournal({ files, assets: [], problems: [] }, { today: LAST_DAY });
}

describe('the generated journal', () => {
  it('is the same to the byte for the same seed, and another for another', () => {
    const once = JSON.stringify([...generateJournal(120, 7)]);
    expect(JSON.stringify([...generateJournal(120, 7)])).toBe(once);
    expect(JSON.stringify([...generateJournal(120, 8)])).not.toBe(once);
  });

  it.each([1, 100, 701])('has a note of its own for each of %i sessions', (sessions) => {
    expect(notesOf(generateJournal(sessions, 1952))).toHaveLength(sessions);
  });

  it('has 0.4 positions a session', () => {
    const journal = generateJournal(1000, 1952);
    const parts = [...journal].filter(([path]) => path.startsWith('parts/'));
    const own = parts.flatMap(([, text]) => text.split('\n')).filter((line) => /\{ id: /.test(line) && !/, for: /.test(line));
    expect(own).toHaveLength(400);
  });

  it('has notes of about 1.2 kB', () => {
    const notes = notesOf(generateJournal(1000, 1952));
    const mean = notes.reduce((sum, [, text]) => sum + Buffer.byteLength(text), 0) / notes.length;
    expect(mean).toBeGreaterThan(1000);
    expect(mean).toBeLessThan(1500);
  });

  it.each([1, 100, 20_000])('keeps every date of %i sessions after the arrival, before today and in the file name', (sessions) => {
    const journal = generateJournal(sessions, 3);
    const arrived = /^arrived: (.+)$/m.exec(journal.get('journal.yaml') ?? '')?.[1] ?? '';
    expect(arrived >= '1989-01-01').toBe(true);
    for (const [path, text] of notesOf(journal)) {
      const date = /^date: (.+)$/m.exec(text)?.[1] ?? '';
      expect(path.startsWith(`sessions/${date}`)).toBe(true);
      expect(date > arrived && date <= '2026-11-24').toBe(true);
    }
  });

  it.each([1, 2, 3])('compiles without a single diagnostic from seed %i', (seed) => {
    const { record, diagnostics } = compiled(generateJournal(400, seed));
    expect(diagnostics).toEqual([]);
    expect(record?.journal.sessions).toHaveLength(400);
    expect(record?.history.reached.size).toBe(5);
    expect(record?.history.deeds.length).toBeGreaterThan(1000);
  });

  it('is judged by rules that bite: a note told a second time is an error', () => {
    const journal = generateJournal(400, 1);
    const notes = notesOf(journal);
    const fitted = notes.find(([, text]) => /did: fitted/.test(text)) ?? ['', ''];
    journal.set(fitted[0].replace(/\/[\d-]{10}/, '/2026-11-24'), fitted[1].replace(/^date: .+$/m, 'date: 2026-11-24'));
    expect(compiled(journal).diagnostics.some(({ severity }) => severity === 'error')).toBe(true);
  });

  it('is YAML that another reader understands', () => {
    for (const [path, text] of generateJournal(150, 5)) {
      const yaml = path.endsWith('.md') ? (text.split('---\n')[1] ?? '') : text;
      expect(() => parse(yaml, { schema: 'failsafe' }), path).not.toThrow();
    }
  });
});

describe('the source of chance', () => {
  it('gives every number of a range and no other', () => {
    const random = randomFrom(1);
    const seen = new Set(Array.from({ length: 500 }, () => random.between(3, 7)));
    expect([...seen].sort()).toEqual([3, 4, 5, 6, 7]);
  });
});
