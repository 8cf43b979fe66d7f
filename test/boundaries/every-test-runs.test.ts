import { readdirSync } from 'node:fs';
import { expect, test } from 'vitest';
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
