import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { removeAbandoned } from '../../src/site/abandoned.ts';

test('folders of processes that are gone are removed, and nothing else', () => {
  const gone = spawnSync(process.execPath, ['-e', '']).pid;
  const folder = mkdtempSync(join(tmpdir(), 'asfound-abandoned-'));
  for (const name of [`pages-${gone}`, `pages-${gone}-media`, `pages-${process.pid}`, 'pages-of-mine', `other-${gone}`])
    mkdirSync(join(folder, name));
  removeAbandoned(folder, 'pages-');
  expect(readdirSync(folder).sort()).toEqual([`other-${gone}`, `pages-${process.pid}`, 'pages-of-mine'].sort());
  removeAbandoned(join(folder, 'nowhere'), 'pages-');
});
