/** A page that is kept from build to build knows the record by what it asks alone. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { ALL_QUESTIONS } from '../../src/site/kept/questions.ts';
import { PROGRAM } from '../../src/site/tool-digest.ts';

const under = (folder: string, ending: string): string[] =>
  readdirSync(join(PROGRAM, folder), { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith(ending))
    .map((name) => join(folder, name));
const textOf = (path: string): string => readFileSync(join(PROGRAM, path), 'utf8');

const KEPT = under('src/pages', '.astro').filter((path) => textOf(path).includes('pageSheet('));

test('there are such pages', () => {
  expect(KEPT.length).toBeGreaterThanOrEqual(18);
});

test.each(KEPT)('%s takes the record for its sheet alone, and nothing that was handed to it with its address', (path) => {
  const text = textOf(path);
  // A page that there is one of has no parameters.
  const page = text.slice(text.includes('Astro.params') ? text.indexOf('Astro.params') : text.indexOf('const sheet'));
  expect(page.match(/theRecord\(\)/g)).toHaveLength(1);
  expect(page).toContain('pageSheet(await theRecord(), ');
  expect(text).not.toContain('Astro.props');
  expect(page.slice(0, page.indexOf('\n---')).replace(/pageSheet\([^\n]*/, '')).not.toMatch(/\brecord\b/);
});

test('every question is known by a name of its own, so that it can be asked again', () => {
  const names = ALL_QUESTIONS.map(({ name }) => name);
  expect(new Set(names).size).toBe(names.length);
  const made = under('src/site', '.ts').flatMap((path) =>
    [...textOf(path).matchAll(/\b(?:shown|shownThen|lookup)\(\s*'([^']+)'/g)].map(([, name = '']) => name),
  );
  expect([...made].sort()).toEqual([...names].sort());
});
