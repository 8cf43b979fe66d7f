import { existsSync, readFileSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { takeLock } from '../../../src/site/swap/lock.ts';
import { thisProcess } from '../../../src/site/swap/owner.ts';
import { until } from '../../cli/started.ts';
import { folderWith } from '../../load/folder.ts';

const held = (owner: object): string => folderWith({ lock: JSON.stringify({ ...thisProcess('theirs'), ...owner }) });
const quiet = () => undefined;

test('one process holds it at a time, and whoever waits is told for whom', async () => {
  const folder = folderWith({});
  const first = await takeLock(folder, quiet);
  const told: string[] = [];
  let got = false;
  const second = takeLock(folder, (whose) => told.push(whose)).then((lock) => {
    got = true;
    return lock;
  });
  await new Promise((wait) => setTimeout(wait, 400));
  expect([got, first.isOurs(), told]).toEqual([false, true, [`process ${process.pid}`]]);
  first.release();
  const lock = await second;
  expect(lock.isOurs()).toBe(true);
  lock.release();
  expect(existsSync(join(folder, 'lock'))).toBe(false);
});

test.each([
  ['a process that is gone', { pid: 2 ** 22 + 1 }],
  ['a process whose number another one has now', { began: '1' }],
])('is taken from %s', async (_, owner) => {
  const lock = await takeLock(held(owner), quiet);
  expect(lock.isOurs()).toBe(true);
  lock.release();
});

test('is taken from another machine only when that has given no sign of life for long enough', async () => {
  const folder = held({ where: 'elsewhere', pid: 1 });
  let beats = 0;
  const beating = setInterval(() => {
    beats += 1;
    utimesSync(join(folder, 'lock'), beats, beats);
  }, 50);
  const told: string[] = [];
  const started = performance.now();
  const taking = takeLock(folder, (whose) => told.push(whose), { silentMs: 600 });
  await new Promise((wait) => setTimeout(wait, 1500));
  expect(JSON.parse(readFileSync(join(folder, 'lock'), 'utf8')).where).toBe('elsewhere');
  clearInterval(beating);
  const lock = await taking;
  expect(performance.now() - started).toBeGreaterThan(1500 + 500);
  expect(told).toEqual(['process 1 of another machine']);
  lock.release();
});

test('one that was cut short while it was written is taken when nothing becomes of it', async () => {
  const folder = folderWith({ lock: '{"whe' });
  const lock = await takeLock(folder, quiet, { silentMs: 300 });
  expect(lock.isOurs()).toBe(true);
  lock.release();
});

test('shows each second that its holder lives', async () => {
  const folder = folderWith({});
  const lock = await takeLock(folder, quiet);
  const told: string[] = [];
  // Seen from another machine.
  const text = readFileSync(lock.file, 'utf8');
  writeFileSync(lock.file, text.replace(/"where":"/, '"where":"not '));
  const waiting = takeLock(folder, (whose) => told.push(whose), { silentMs: 100_000 });
  const signs = new Set<number>();
  await until(async () => signs.add(statSync(lock.file).mtimeMs).size > 3);
  expect([lock.isOurs(), told.length]).toEqual([true, 1]);
  lock.release();
  (await waiting).release();
});
