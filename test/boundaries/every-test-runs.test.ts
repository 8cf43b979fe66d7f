import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';

test('every folder of tests is in a project, so that none of them lies unrun', () => {
  const root = new URL('..', import.meta.url).pathname;
  const config = readFileSync(`${root}vitest.config.ts`, 'utf8');
  const tests = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((path) => path.endsWith('.test.ts'));
  const folders = [...new Set(tests.map((path) => path.split('/')[0] ?? ''))];
  expect(folders.filter((folder) => !config.includes(`'${folder}'`) && !config.includes(`test/${folder}/`))).toEqual([]);
  expect(folders.length).toBeGreaterThan(10);
});
