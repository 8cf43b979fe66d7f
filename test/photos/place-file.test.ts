import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { linkInto } from '../../src/photos/place-file.ts';

let folder: string;
const at = (name: string): string => join(folder, name);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'asfound-place-'));
  writeFileSync(at('made.webp'), 'a drum');
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test('a picture is placed into a site that has no folder for it yet', () => {
  linkInto(at('made.webp'), at('site/pictures/drum.webp'));
  expect(readFileSync(at('site/pictures/drum.webp'), 'utf8')).toBe('a drum');
  expect(readdirSync(at('site/pictures'))).toEqual(['drum.webp']);
});

test('a picture takes no room of its own in the site', () => {
  linkInto(at('made.webp'), at('drum.webp'));
  expect(statSync(at('drum.webp')).ino).toBe(statSync(at('made.webp')).ino);
});

test('a picture takes the place of another of the name, and nothing is left beside it', () => {
  mkdirSync(at('site'));
  writeFileSync(at('site/drum.webp'), 'another drum');
  linkInto(at('made.webp'), at('site/drum.webp'));
  expect(readFileSync(at('site/drum.webp'), 'utf8')).toBe('a drum');
  expect(readdirSync(at('site'))).toEqual(['drum.webp']);
});

test('a picture that is placed already is left alone', () => {
  linkInto(at('made.webp'), at('drum.webp'));
  const before = statSync(at('drum.webp')).ctimeMs;
  linkInto(at('made.webp'), at('drum.webp'));
  expect(statSync(at('drum.webp')).ctimeMs).toBe(before);
});

test('a picture that is gone from where it was kept is no empty file in the site', () => {
  rmSync(at('made.webp'));
  expect(() => linkInto(at('made.webp'), at('site/drum.webp'))).toThrow(/ENOENT/);
  expect(() => readdirSync(at('site'))).toThrow(/ENOENT/);
});
