import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { folderWith, put } from '../load/folder.ts';
import { JOURNAL } from './journal.ts';
import { finished } from './started.ts';

const NOTE = 'van/sessions/2031-03-02-drum.md';

type State = Map<string, { digest: string; mtimeMs: number }>;

/** Every file of a site with the digest of its bytes and the time it was written. */
function stateOf(site: string): State {
  const files = readdirSync(site, { recursive: true, encoding: 'utf8' }).filter((path) => statSync(join(site, path)).isFile());
  return new Map(
    files.sort().map((path) => {
      const digest = createHash('sha256')
        .update(readFileSync(join(site, path)))
        .digest('hex');
      return [path, { digest, mtimeMs: statSync(join(site, path)).mtimeMs }];
    }),
  );
}

const filesIn = (folder: string): number => readdirSync(folder, { recursive: true }).length;

const digestsOf = (state: State): [string, string][] => [...state].map(([path, { digest }]) => [path, digest]);
const digests = (site: string): [string, string][] => digestsOf(stateOf(site));

test('a site is built, left alone while nothing changes, made whole where it lost a file, kept through a mistake, and the same to the byte when made again a year later', {
  timeout: 180_000,
}, () => {
  const cwd = folderWith(JOURNAL);
  const site = join(cwd, 'dist');
  const build = (env: NodeJS.ProcessEnv = {}) => finished(['build', '--content', 'van'], cwd, undefined, 0, env);
  // What Node compiles is kept where these builds alone keep it.
  const apart = { NODE_COMPILE_CACHE: join(cwd, 'compiled') };

  const first = build();
  expect(first.stderr).toContain('The site is in dist');
  expect([first.status, first.stdout]).toEqual([0, '']);
  for (const path of ['index.html', 'sessions/2031-03-02-drum.html', 'parts/drum.html', 'data/register.csv', 'data/entries.csv']) {
    expect(existsSync(join(site, path)), path).toBe(true);
  }
  expect(readdirSync(cwd).filter((name) => name.startsWith('.asfound-'))).toEqual([]);
  expect(first.stderr).not.toContain('\u001b');

  const built = stateOf(site);
  const second = build();
  expect([second.status, second.stderr.trim().split('\n').length]).toEqual([0, 1]);
  expect(second.stderr).toContain('Nothing has changed');
  expect(stateOf(site)).toEqual(built);

  rmSync(join(site, 'parts/drum.html'));
  expect(build(apart).status).toBe(0);
  expect(digests(site)).toEqual(digestsOf(built));

  const whole = stateOf(site);
  put(cwd, NOTE, (JOURNAL[NOTE] ?? '').replace('did: removed', 'did: fitted'));
  expect(build().status).toBe(1);
  expect(stateOf(site)).toEqual(whole);

  put(cwd, NOTE, (JOURNAL[NOTE] ?? '').replace('Off it came.', 'Off it came at last.'));
  const compiled = filesIn(apart.NODE_COMPILE_CACHE);
  expect(compiled).toBeGreaterThan(100);
  expect(build(apart).status).toBe(0);
  expect(filesIn(apart.NODE_COMPILE_CACHE), 'what a build leaves is used by the next').toBe(compiled);
  expect(readFileSync(join(site, 'sessions/2031-03-02-drum.html'), 'utf8')).toContain('at last.');

  put(cwd, NOTE, JOURNAL[NOTE] ?? '');
  rmSync(join(cwd, 'cache'), { recursive: true });
  // By pages that are compiled anew, not by those that other tests compiled, and whatever else goes on in the environment.
  const env = { ASFOUND_EDITION: '', NODE_ENV: 'development', DEV: '1' };
  const later = finished(['build', '--content', 'van', '--out', 'again'], cwd, undefined, 400, env);
  expect([later.status, later.stderr]).toEqual([0, expect.stringContaining('The site is in again')]);
  const styles = readFileSync(join(cwd, 'again/index.html'), 'utf8').match(/[\w-]+\.css/g) ?? [];
  // The other one is asked for by a script, from a disk.
  expect(['faces-from-disk.css', ...styles]).toEqual(readdirSync(join(cwd, 'again/css')).toSorted());
  expect(digests(join(cwd, 'again'))).toEqual(digestsOf(built));
});

test('a site as it stood on a day is made from the notes up to then', () => {
  const cwd = folderWith({ ...JOURNAL, 'van/sessions/2031-03-05-pipe.md': '---\ndate: 2031-03-05\ntitle: The pipe\n---\nNot yet.\n' });
  expect(finished(['build', '--content', 'van', '--to', '2031-03-04'], cwd).status).toBe(0);
  const site = join(cwd, 'dist');
  expect(readdirSync(join(site, 'sessions')).filter((name) => name.startsWith('2031'))).toEqual(['2031-03-02-drum.html']);
  expect(readFileSync(join(site, 'about.html'), 'utf8')).toContain('The record stands on 4 March 2031');
  expect(finished(['build', '--content', 'van'], cwd).stderr).toContain('The site is in dist');
  expect(readFileSync(join(site, 'about.html'), 'utf8')).toContain('The record stands on 5 March 2031');
});
