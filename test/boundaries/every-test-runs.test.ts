import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { LONGEST } from '../longest-first.ts';
import config, { APART } from '../vitest.config.ts';

test('every folder of tests is in a project, so that none of them lies unrun', () => {
  const included = JSON.stringify(config);
  const tests = readdirSync(new URL('..', import.meta.url), { recursive: true, encoding: 'utf8' }).filter((path) =>
    path.endsWith('.test.ts'),
  );
  const folders = [...new Set(tests.map((path) => path.split('/')[0] ?? ''))];
  expect(folders.filter((folder) => !included.includes(`"test/${folder}/`))).toEqual([]);
  expect(folders.length).toBeGreaterThan(10);
});

test('what puts something else in the place of a module is by itself, and whatever is named is there', () => {
  const tests = readdirSync(new URL('..', import.meta.url), { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.ts'));
  const mocking = tests.filter((path) =>
    /\bvi\s*\.\s*(mock|doMock|stubGlobal)\(/.test(readFileSync(new URL(`../${path}`, import.meta.url), 'utf8')),
  );
  expect(mocking.map((path) => `test/${path}`).filter((path) => !APART.includes(path))).toEqual([]);
  expect(mocking.length).toBeGreaterThan(0);
  expect(APART.filter((path) => !existsSync(new URL(`../../${path}`, import.meta.url)))).toEqual([]);
});

test('every file that is named among the longest is there', () => {
  const missing = LONGEST.filter((path) => !existsSync(new URL(`../../${path}`, import.meta.url)));
  expect(missing).toEqual([]);
});
