import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, statSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { makeFolder } from '../../src/disk/folders.ts';
import { IsThere, writeNewFile, writeNewFolder, writeOver } from '../../src/disk/write-new.ts';
import { folderWith, put } from '../load/folder.ts';

const NOTE = new Map([
  ['index.md', 'note'],
  ['a/b.txt', 'b'],
]);

test('a new file is there as a whole, with the folders above it, and nothing beside it', () => {
  const folder = folderWith({});
  writeNewFile(join(folder, 'a/b/note.md'), 'text');
  expect(readFileSync(join(folder, 'a/b/note.md'), 'utf8')).toBe('text');
  expect(readdirSync(join(folder, 'a/b'))).toEqual(['note.md']);
});

test('what is there already is left as it is: a file, a folder, a link to nothing', () => {
  const folder = folderWith({ 'file.md': 'mine', 'folder/x': 'mine' });
  symlinkSync('nowhere', join(folder, 'link.md'));
  for (const name of ['file.md', 'folder', 'link.md']) {
    expect(() => writeNewFile(join(folder, name), 'theirs')).toThrow(IsThere);
    expect(() => writeNewFolder(join(folder, name), NOTE)).toThrow(IsThere);
  }
  expect(readFileSync(join(folder, 'file.md'), 'utf8')).toBe('mine');
  expect(readdirSync(folder).sort()).toEqual(['file.md', 'folder', 'link.md']);
  expect(existsSync(join(folder, 'nowhere'))).toBe(false);
});

test('a new folder is there with all that is in it, and what a process that is gone had begun is taken away', () => {
  const folder = folderWith({});
  put(folder, '.unfinished-4194305-abc/index.md', 'half');
  put(folder, `.unfinished-${process.ppid}-abc/index.md`, 'theirs');
  writeNewFolder(join(folder, 'note'), NOTE);
  expect([readFileSync(join(folder, 'note/index.md'), 'utf8'), readFileSync(join(folder, 'note/a/b.txt'), 'utf8')]).toEqual(['note', 'b']);
  expect(readdirSync(folder).sort()).toEqual([`.unfinished-${process.ppid}-abc`, 'note']);
});

test.skipIf(!existsSync('/dev/full'))('a disk that takes no more leaves nothing half written', () => {
  const folder = folderWith({});
  // Where a file should be made in what is none, nothing can be written.
  put(folder, 'file', '');
  expect(() => writeNewFile(join(folder, 'file/note.md'), 'x')).toThrow();
  expect(() => writeNewFolder(join(folder, 'new/deep/note'), new Map([['a'.repeat(300), 'x']]))).toThrow('ENAMETOOLONG');
  expect(readdirSync(folder)).toEqual(['file']);
});

test.skipIf(process.platform !== 'linux')('a place that folders cannot be made in is told, not waited for', () => {
  expect(() => makeFolder('/proc/asfound/journal')).toThrow();
  expect(() => makeFolder('/proc/self/fd/asfound/a')).toThrow();
});

test('a folder that is there, or is made by another meanwhile, is no error', () => {
  const folder = folderWith({});
  mkdirSync(join(folder, 'a'));
  expect(makeFolder(join(folder, 'a/b/c'))).toEqual([join(folder, 'a/b'), join(folder, 'a/b/c')]);
  expect(makeFolder(join(folder, 'a/b/c'))).toEqual([]);
});

test('a file that is written over keeps its mode, and is what it was when that cannot be done', () => {
  const folder = folderWith({ 'note.md': 'old' });
  chmodSync(join(folder, 'note.md'), 0o600);
  put(folder, '.unfinished-4194305-abc', 'half');
  writeOver(join(folder, 'note.md'), 'new');
  expect([readFileSync(join(folder, 'note.md'), 'utf8'), statSync(join(folder, 'note.md')).mode & 0o777]).toEqual(['new', 0o600]);
  expect(() => writeOver(join(folder, 'nowhere.md'), 'new')).toThrow('ENOENT');
  expect(readdirSync(folder)).toEqual(['note.md']);
});
