import { execFileSync } from 'node:child_process';
import { symlinkSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { LARGEST_SOURCE, loadJournal } from '../../src/load/load.ts';
import { folderWith, put } from './folder.ts';

const paths = (list: readonly { readonly path: string }[]): string[] => list.map((one) => one.path);
const codes = (folder: string): string[] => loadJournal(folder).problems.map((problem) => `${problem.code} ${problem.place.file}`);

describe('a journal folder', () => {
  test('gives its notes and catalogues as sources and everything beside them as assets, in the order of the paths', () => {
    const folder = folderWith({
      'sessions/2031-03-12-brakes/index.md': 'a',
      'sessions/2031-03-12-brakes/drum.jpg': 'jpeg',
      'sessions/2031-03-11.md': 'b',
      'papers/receipt.pdf': 'pdf',
      'parts/brakes.yaml': '[]',
      'consumables.yaml': '{}',
      'journal.yaml': 'title: x',
    });
    const loaded = loadJournal(folder);
    expect(paths(loaded.files)).toEqual([
      'consumables.yaml',
      'journal.yaml',
      'parts/brakes.yaml',
      'sessions/2031-03-11.md',
      'sessions/2031-03-12-brakes/index.md',
    ]);
    expect(loaded.assets.map(({ path, size }) => ({ path, size }))).toEqual([
      { path: 'papers/receipt.pdf', size: 3 },
      { path: 'sessions/2031-03-12-brakes/drum.jpg', size: 4 },
    ]);
    expect(loaded.problems).toEqual([]);
  });

  test('keeps the bytes of a note as they are, whatever they are', () => {
    const bytes = Uint8Array.of(0xff, 0xfe, 0x0d, 0x0a);
    const loaded = loadJournal(folderWith({ 'sessions/2031-03-12.md': bytes }));
    expect([...(loaded.files[0]?.bytes ?? [])]).toEqual([...bytes]);
  });

  test('leaves other folders, other top files and dotfiles alone', () => {
    const folder = folderWith({
      'scenes/a.pov': '',
      'scenes/b.md': '',
      'README.md': '',
      'sessions/.draft.md': '',
      'sessions/.trash/a.md': '',
      '.journal.yaml': '',
    });
    expect(loadJournal(folder)).toMatchObject({ files: [], assets: [], problems: [] });
  });

  test('names a catalogue whose file name keeps it from being read', () => {
    const folder = folderWith({ 'parts/brakes.yml': '[]', 'journal.yml': '', 'parts/old/brakes.yaml': '[]' });
    expect(codes(folder).sort()).toEqual(['A110 journal.yml', 'A110 parts/brakes.yml', 'A110 parts/old/brakes.yaml']);
    expect(loadJournal(folder).problems.find((one) => one.place.file === 'journal.yml')?.hint).toContain('journal.yaml');
  });

  test.each(['index.MD', 'index.markdown', 'index.md.txt'])('names a note that is not read for its name, %s', (name) => {
    const { problems } = loadJournal(folderWith({ [`sessions/2031-03-12-x/${name}`]: '---' }));
    expect(problems.map(({ code, hint }) => `${code} ${hint}`)).toEqual(['A110 Name it index.md.']);
  });

  test('does not read a note over 1 MB, and reads one of just 1 MB', () => {
    const folder = folderWith({
      'sessions/2031-03-12.md': new Uint8Array(LARGEST_SOURCE + 1),
      'sessions/2031-03-13.md': new Uint8Array(LARGEST_SOURCE),
    });
    expect(codes(folder)).toEqual(['A104 sessions/2031-03-12.md']);
    expect(paths(loadJournal(folder).files)).toEqual(['sessions/2031-03-13.md']);
  });

  test('reads an unchanged note once, and a changed one again', () => {
    const folder = folderWith({ 'sessions/2031-03-12.md': 'one', 'sessions/2031-03-13.md': 'two' });
    const first = loadJournal(folder);
    put(folder, 'sessions/2031-03-13.md', 'six');
    utimesSync(join(folder, 'sessions/2031-03-13.md'), 1, 1);
    const second = loadJournal(folder, first);
    expect(second.files[0]).toBe(first.files[0]);
    expect(new TextDecoder().decode(second.files[1]?.bytes)).toBe('six');
  });

  test('that is not there is the caller\u2019s affair', () => {
    expect(() => loadJournal(join(folderWith({}), 'nowhere'))).toThrow(expect.objectContaining({ code: 'ENOENT' }));
  });
});

describe('a symbolic link', () => {
  test('is followed while it stays inside the journal', () => {
    const folder = folderWith({ 'shelf/note.md': 'a', 'shelf/film/reel.mp4': '' });
    put(folder, 'sessions/2031-03-11.md', '');
    symlinkSync('../shelf/note.md', join(folder, 'sessions/2031-03-12.md'));
    symlinkSync('../shelf/film', join(folder, 'sessions/film'));
    const loaded = loadJournal(folder);
    expect(paths(loaded.files)).toContain('sessions/2031-03-12.md');
    expect(paths(loaded.assets)).toEqual(['sessions/film/reel.mp4']);
    expect(loaded.problems).toEqual([]);
  });

  test('that leads out is named and not followed, be it a file or a folder', () => {
    const outside = folderWith({ 'secret.md': 'secret', 'notes/a.md': 'secret' });
    const folder = folderWith({ 'sessions/2031-03-11.md': '' });
    symlinkSync(join(outside, 'secret.md'), join(folder, 'sessions/2031-03-12.md'));
    symlinkSync(join(outside, 'notes'), join(folder, 'sessions/more'));
    symlinkSync(outside, join(folder, 'papers'));
    expect(codes(folder).sort()).toEqual(['A106 papers', 'A106 sessions/2031-03-12.md', 'A106 sessions/more']);
    expect(paths(loadJournal(folder).files)).toEqual(['sessions/2031-03-11.md']);
  });

  test('that points to nothing, or round in a circle, is named', () => {
    const folder = folderWith({ 'sessions/2031-03-11.md': '' });
    symlinkSync('nowhere.md', join(folder, 'sessions/2031-03-12.md'));
    symlinkSync('../sessions', join(folder, 'sessions/again'));
    expect(codes(folder).sort()).toEqual(['A107 sessions/2031-03-12.md', 'A107 sessions/again']);
  });

  test('between two folders that link to each other comes to an end', () => {
    const folder = folderWith({ 'sessions/a/index.md': '', 'sessions/b/index.md': '' });
    symlinkSync('../b', join(folder, 'sessions/a/other'));
    symlinkSync('../a', join(folder, 'sessions/b/other'));
    expect(codes(folder).every((code) => code.startsWith('A107'))).toBe(true);
    expect(loadJournal(folder).files.length).toBeLessThan(6);
  });
});

test.skipIf(process.platform === 'win32')('a pipe named like a note is named, not waited for', () => {
  const folder = folderWith({ 'sessions/2031-03-11.md': '' });
  execFileSync('mkfifo', [join(folder, 'sessions/2031-03-12.md')]);
  expect(codes(folder)).toEqual(['A107 sessions/2031-03-12.md']);
});
