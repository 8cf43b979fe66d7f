import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { openWorkshop } from '../../src/site/workshop.ts';
import { folderWith } from '../load/folder.ts';

test('a workshop finds the packages, goes when it is closed, and those of processes that are gone go with the next', () => {
  const cache = folderWith({});
  const gone = spawnSync(process.execPath, ['-e', '']).pid;
  const names = [`unfinished-${gone}-0123456789ab`, `unfinished-${process.ppid}-0123456789ab`, 'of-mine'];
  for (const name of names) mkdirSync(join(cache, 'workshops', name), { recursive: true });
  const workshop = openWorkshop(cache);
  expect(existsSync(join(workshop.folder, 'node_modules/astro/package.json'))).toBe(true);
  workshop.close();
  expect(readdirSync(join(cache, 'workshops')).sort()).toEqual(names.slice(1).sort());
  expect(existsSync(join(process.cwd(), 'node_modules/astro'))).toBe(true);
});
