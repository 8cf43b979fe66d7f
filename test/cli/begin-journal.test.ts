import { mkdirSync, readdirSync, readFileSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folderWith, put } from '../load/folder.ts';
import { run } from './run.ts';

const WHOLE = ['.schemas', 'consumables.yaml', 'journal.yaml', 'papers', 'parts'];

test('a journal that was half begun when it was killed is begun again, wherever the kill fell', async () => {
  const cwd = folderWith({});
  expect((await run(['init', 'whole'], { cwd })).exit).toBe(0);
  expect(readdirSync(join(cwd, 'whole')).sort()).toEqual(WHOLE);
  // While its files were written; when all were; and after each that had come to its place.
  put(cwd, 'killed-0/.unfinished-4194305-abc/journal.yaml', 'ti');
  for (const [n] of WHOLE.entries()) {
    const folder = join(cwd, `killed-${n + 1}`);
    expect((await run(['init', folder], { cwd })).exit).toBe(0);
    mkdirSync(join(folder, '.asfound-begun'));
    for (const name of ['journal.yaml', ...WHOLE.filter((each) => each !== 'journal.yaml')].slice(0, n + 1)) {
      renameSync(join(folder, name), join(folder, '.asfound-begun', name));
    }
  }
  for (let n = 0; n <= WHOLE.length; n++) {
    expect(await run(['init', `killed-${n}`], { cwd })).toMatchObject({ exit: 0 });
    expect(readdirSync(join(cwd, `killed-${n}`)).sort()).toEqual(WHOLE);
    expect((await run(['check', '--content', `killed-${n}`], { cwd })).exit).toBe(0);
  }
  expect((await run(['init', 'killed-1'], { cwd })).exit).toBe(3);
});

test('a file of the user\u2019s is not written over by a journal that is begun again', async () => {
  const cwd = folderWith({ 'van/.asfound-begun/journal.yaml': 'ours', 'van/journal.yaml': 'mine' });
  expect(await run(['init', 'van'], { cwd })).toMatchObject({ exit: 3, err: expect.stringContaining('there already') });
  expect(readFileSync(join(cwd, 'van/journal.yaml'), 'utf8')).toBe('mine');
});

test.skipIf(process.platform !== 'linux')('a place where no folder can be made is told at once', async () => {
  const cwd = folderWith({});
  for (const argv of [
    ['init', '/proc/asfound/van'],
    ['build', '--content', 'van', '--out', '/proc/asfound/site'],
  ]) {
    if (argv[0] === 'build') await run(['init', 'van'], { cwd });
    const { exit, err } = await run(argv, { cwd });
    expect([exit, err.split('\n').length]).toEqual([3, 2]);
    expect(err).toContain('/proc/asfound');
  }
});
