import { expect, test } from 'vitest';
import { compileJournal } from '../../src/journal/pipeline.ts';
import type { KnownNotes } from '../../src/journal/read/read-files.ts';
import type { SourceFile } from '../../src/journal/read/source/sources.ts';
import { generateJournal } from '../bench/generate.ts';
import { randomFrom } from '../bench/random.ts';

const encoder = new TextEncoder();
const decoder = new TextDecoder();
const OPTIONS = { today: '2027-01-01' };

/** What happens to the text of a file between two compiles; most of it leaves something to be told. */
const EDITS: readonly ((text: string) => string)[] = [
  (text) => text.replace(/^title: /m, 'title: Again, '),
  (text) => text.replace('did: removed', 'did: remvoed'),
  (text) => text.replace(/time: [^ ,]+/, 'time: 3h'),
  (text) => text.replace(/^date: .*$/m, 'date: soon'),
  (text) => text.replace('](part:', '](part:not-'),
  (text) => text.slice(0, Math.floor(text.length / 2)),
  (text) => `${text}\n\u0007\n`,
  (text) => text.replace(/name: /, 'name: Another '),
];

test('a journal compiled again and again gives what it gives when it is read for the first time', () => {
  const random = randomFrom(1952);
  const readBefore: KnownNotes = new WeakMap();
  let files: readonly SourceFile[] = [...generateJournal(40, 1952)].map(([path, text]) => ({ path, bytes: encoder.encode(text) }));
  const compile = (of: readonly SourceFile[], known?: KnownNotes) =>
    compileJournal({ files: of, assets: [], problems: [] }, { ...OPTIONS, readBefore: known });
  for (let round = 0; round < 40; round += 1) {
    const fresh = files.map(({ path, bytes }) => ({ path, bytes }));
    expect(compile(files, readBefore)).toEqual(compile(fresh));
    const edited = random.pick(files);
    const edit = random.pick(EDITS);
    const isGone = random.chance(0.1) && edited.path !== 'journal.yaml';
    files = files.flatMap((file) => {
      if (file !== edited) return [file];
      return isGone ? [] : [{ path: file.path, bytes: encoder.encode(edit(decoder.decode(file.bytes))) }];
    });
  }
});

test('a note whose file has not changed is not read again', () => {
  const readBefore: KnownNotes = new WeakMap();
  const files = [...generateJournal(3, 1)].map(([path, text]) => ({ path, bytes: encoder.encode(text) }));
  const sources = { files, assets: [], problems: [] };
  const first = compileJournal(sources, { ...OPTIONS, readBefore });
  for (const file of files) if (file.path.endsWith('.md')) file.bytes = encoder.encode('---\nno: note\n---\n');
  expect(compileJournal(sources, { ...OPTIONS, readBefore })).toEqual(first);
  expect(compileJournal(sources, OPTIONS).diagnostics).not.toEqual(first.diagnostics);
});
