import { existsSync, readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
import { LONGEST } from '../longest-first.ts';
import config from '../vitest.config.ts';

test('every folder of tests is in a project, so that none of them lies unrun', () => {
  const included = JSON.stringify(config);
  const tests = readdirSync(new URL('..', import.meta.url), { recursive: true, encoding: 'utf8' }).filter((path) =>
    path.endsWith('.test.ts'),
  );
  const folders = [...new Set(tests.map((path) => path.split('/')[0] ?? ''))];
  expect(folders.filter((folder) => !included.includes(`"test/${folder}/`))).toEqual([]);
  expect(folders.length).toBeGreaterThan(10);
});

test('every file that is named among the longest is there', () => {
  const missing = LONGEST.filter((path) => !existsSync(new URL(`../../${path}`, import.meta.url)));
  expect(missing).toEqual([]);
});
