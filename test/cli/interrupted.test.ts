import { spawn } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { folderWith, put } from '../load/folder.ts';
import { JOURNAL } from './journal.ts';
import { envIn, finished, until } from './started.ts';

const LAUNCHER = fileURLToPath(new URL('../../src/cli/asfound.mjs', import.meta.url));

test.each(['SIGINT', 'SIGTERM'] as const)(
  'a build that is ended by %s leaves the last site as it was, and nothing beside it',
  async (signal) => {
    const cwd = folderWith(JOURNAL);
    put(cwd, 'dist/.asfound-site', '{"made":"before","files":{"index.html":6}}');
    put(cwd, 'dist/index.html', 'before');
    // It compiles the pages anew, so that there is time to end it.
    const env = { ...envIn(cwd), ASFOUND_EDITION: '' };
    const child = spawn(process.execPath, [LAUNCHER, 'build', '--content', 'van'], { cwd, stdio: 'ignore', env });
    const ended = new Promise<number | null>((resolve) => child.once('exit', resolve));
    await until(async () => existsSync(join(cwd, '.asfound-work-dist/new')));
    child.kill(signal);
    expect(await ended).toBe(signal === 'SIGINT' ? 130 : 143);
    expect(readdirSync(cwd).sort()).toEqual(['cache', 'dist', 'van']);
    expect(readFileSync(join(cwd, 'dist/index.html'), 'utf8')).toBe('before');
  },
);

test('nothing is told to anybody of the use of the program, and nothing is written outside its places', () => {
  const cwd = folderWith(JOURNAL);
  const home = join(cwd, 'home');
  put(home, 'mine.txt', '');
  const { status } = finished(['build', '--content', 'van'], cwd, process.execPath, 0, {
    HOME: home,
    XDG_CONFIG_HOME: join(home, 'config'),
  });
  expect([status, readdirSync(home)]).toEqual([0, ['mine.txt']]);
});
