import { expect, test } from 'vitest';
import { compileJournal, type MadeBefore, nothingMade } from '../../src/journal/pipeline.ts';
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
  // What others name is there no more, or is there again under the name that they give it.
  (text) => text.replace(/id: ([a-z-]+)/, 'id: $1-once'),
  (text) => text.replace(/-once/, ''),
];

test('a journal compiled again and again gives what it gives when it is read for the first time', () => {
  const random = randomFrom(1952);
  const before = nothingMade();
  let files: readonly SourceFile[] = [...generateJournal(40, 1952)].map(([path, text]) => ({ path, bytes: encoder.encode(text) }));
  const compile = (of: readonly SourceFile[], made?: MadeBefore) =>
    compileJournal({ files: of, assets: [], problems: [] }, { ...OPTIONS, before: made });
  for (let round = 0; round < 40; round += 1) {
    const fresh = files.map(({ path, bytes }) => ({ path, bytes }));
    expect(compile(files, before)).toEqual(compile(fresh));
    const edited = random.pick(files);
    const edit = random.pick(EDITS);
    const isGone = random.chance(0.1) && edited.path !== 'journal.yaml';
    files = files.flatMap((file) => {
      if (file !== edited) return [file];
      return isGone ? [] : [{ path: file.path, bytes: encoder.encode(edit(decoder.decode(file.bytes))) }];
    });
  }
});

test('a file that has not changed is not read again', () => {
  const before = nothingMade();
  const files = [...generateJournal(3, 1)].map(([path, text]) => ({ path, bytes: encoder.encode(text) }));
  const sources = { files, assets: [], problems: [] };
  const first = compileJournal(sources, { ...OPTIONS, before });
  for (const file of files) file.bytes = encoder.encode('---\nno: note\n---\n');
  expect(compileJournal(sources, { ...OPTIONS, before })).toEqual(first);
  expect(compileJournal(sources, OPTIONS).diagnostics).not.toEqual(first.diagnostics);
});

test('a session is compiled again only where its note or what is declared has changed', () => {
  const before = nothingMade();
  const files = [...generateJournal(3, 1)].map(([path, text]) => ({ path, bytes: encoder.encode(text) }));
  const compile = (of: readonly SourceFile[]) => {
    compileJournal({ files: of, assets: [], problems: [] }, { ...OPTIONS, before });
    return before.sessions.sessions;
  };
  const first = compile(files);
  expect(compile(files.map((file) => (file.path.endsWith('.md') ? { ...file } : file)))).toBe(first);
  expect(compile(files.map((file) => (file.path === 'journal.yaml' ? { ...file } : file)))).not.toBe(first);
});

const JOURNAL: Readonly<Record<string, string>> = {
  'journal.yaml':
    'title: A dray\nvehicle: { make: A wheelwright }\narrived: 2025-01-01\ntime-zone: Europe/London\nlocale: en-GB\npeople: { rh: { name: R. } }\nsubsystems: { wheels: { name: Wheels } }\n',
  'consumables.yaml': 'oil: { name: Oil, unit: L }\n',
  'parts/wheels.yaml': '- { id: wheel, name: A wheel, origin: original }\n',
  'sessions/2025-02-01.md': '---\ndate: 2025-02-01\ntitle: First\n---\nOff it came.\n',
  'sessions/2025-02-02.md':
    '---\ndate: 2025-02-02\ntitle: Second\nhours: [{ by: rh, on: wheel, time: 1h }]\nused: [{ consumable: oil, amount: 0 L, on: wheels }]\n---\n![It](it.jpg).\n',
  'sessions/2025-02-03.md': '---\ndate: 2025-02-03\ntitle: Third\n---\nSee [before](2025-02-01.md).\n',
};

test.each([
  { of: 'a picture', asset: '', text: null },
  { of: 'a consumable', asset: 'it.jpg', text: ['consumables.yaml', 'oil:', 'grease:'] },
  { of: 'a part', asset: 'it.jpg', text: ['parts/wheels.yaml', 'wheel,', 'hub,'] },
  { of: 'a person', asset: 'it.jpg', text: ['journal.yaml', 'rh:', 'jm:'] },
  { of: 'a note that is linked', asset: 'it.jpg', text: ['sessions/2025-02-01.md', '', null] },
])('$of that is there no more is told of where a note names it that has not changed', ({ asset, text }) => {
  const before = nothingMade();
  const files = Object.entries(JOURNAL).map(([path, written]) => ({ path, bytes: encoder.encode(written) }));
  const compile = (of: readonly SourceFile[], picture: string, made?: MadeBefore) =>
    compileJournal(
      { files: of, assets: picture === '' ? [] : [{ path: `sessions/${picture}`, size: 1 }], problems: [] },
      { ...OPTIONS, before: made },
    ).diagnostics;
  const sound = compile(files, 'it.jpg', before);
  const [path, from, to] = text ?? [];
  const changed = files.flatMap((file) => {
    if (file.path !== path) return [file];
    return to === null ? [] : [{ path, bytes: encoder.encode(JOURNAL[path]?.replace(from ?? '', to ?? '') ?? '') }];
  });
  const again = compile(changed, asset, before);
  expect(again).toEqual(compile(changed, asset));
  expect(again.length).toBeGreaterThan(sound.length);
});
