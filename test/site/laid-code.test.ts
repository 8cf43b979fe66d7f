import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { laidOnce, lay } from '../../src/site/laid-code.ts';

let folder: string;
const home = (name = ''): string => join(folder, 'pages', name);
const CODE = { 'entry.mjs': 'import "./chunks/a.mjs";', 'chunks/a.mjs': 'export const a = 1;' };

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'asfound-laid-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test('code lies where it lay for the last build, untouched, with the packages of the program', () => {
  expect(lay(CODE, home())).toBe(true);
  const before = statSync(home('entry.mjs'));
  expect(lay(CODE, home())).toBe(true);
  const after = statSync(home('entry.mjs'));
  expect([after.ino, after.mtimeMs]).toEqual([before.ino, before.mtimeMs]);
  expect(readdirSync(home()).sort()).toEqual(['chunks', 'entry.mjs', 'node_modules']);
  expect(existsSync(home('node_modules/astro/package.json'))).toBe(true);
});

test('code that was changed or cut short where it lies is as it was given', () => {
  lay(CODE, home());
  writeFileSync(home('chunks/a.mjs'), 'export const a = 2;');
  writeFileSync(home('entry.mjs'), '');
  expect(lay(CODE, home())).toBe(true);
  expect(readFileSync(home('chunks/a.mjs'), 'utf8')).toBe(CODE['chunks/a.mjs']);
  expect(readFileSync(home('entry.mjs'), 'utf8')).toBe(CODE['entry.mjs']);
});

test('what another edition left goes after a day, when no build can be using it', () => {
  lay({ ...CODE, 'chunks/old.mjs': '', 'chunks/new.mjs': '' }, home());
  const before = new Date(Date.now() - 25 * 60 * 60 * 1000);
  utimesSync(home('chunks/old.mjs'), before, before);
  utimesSync(home('chunks/a.mjs'), before, before);
  lay(CODE, home());
  expect(readdirSync(home('chunks')).sort()).toEqual(['a.mjs', 'new.mjs']);
});

test('packages that were moved are found where they are now', () => {
  lay(CODE, home());
  rmSync(home('node_modules'));
  symlinkSync(folder, home('node_modules'), 'junction');
  expect(lay(CODE, home())).toBe(true);
  expect(existsSync(home('node_modules/astro/package.json'))).toBe(true);
});

test('where nothing can be laid, that is said and nothing is thrown', () => {
  writeFileSync(home(), 'a file');
  expect(lay(CODE, home())).toBe(false);
  expect(laidOnce(CODE, home())).toBeNull();
});

test('a process that has loaded code from there loads no other from there: it would remember the journal of the first', () => {
  laidOnce(CODE, home());
  expect(laidOnce(CODE, home())).toBeNull();
});
