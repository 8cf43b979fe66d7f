/**
 * What an earlier build left in the cache and in the site never shows: a site is the same to the byte whether it was built
 * from nothing or is the last of many. `ASFOUND_REBUILDS=100` tries so many builds instead of a few.
 */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { MARKER } from '../../src/site/swap/site-folder.ts';
import { PROGRAM } from '../../src/site/tool-digest.ts';
import { packagesFolder } from '../../src/site/workshop.ts';
import { generateJournal } from '../bench/generate.ts';
import { randomFrom } from '../bench/random.ts';
import { JOURNAL } from '../cli/journal.ts';
import { envIn, finished } from '../cli/started.ts';
import { folderWith, put } from '../load/folder.ts';
import { editByChance, type Files, writeEvening } from './journal-edits.ts';

const BUILDS = Number(process.env.ASFOUND_REBUILDS ?? 4);
/** Then another journal. */
const BUILDS_OF_A_JOURNAL = 8;
const SEEDS = Array.from({ length: Math.ceil(BUILDS / BUILDS_OF_A_JOURNAL) }, (_, n) => 1952 + n);

/** Puts these files, and no others, where the journal lies. */
function layOut(cwd: string, files: Files): void {
  const folder = join(cwd, 'van');
  rmSync(folder, { recursive: true, force: true });
  for (const [path, content] of files) put(folder, path, content);
}

/** What a site is made of; not the list of its files that is kept with it, which names the times of the sources. */
function siteIn(cwd: string): Record<string, string> {
  const files = readdirSync(join(cwd, 'dist'), { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const paths = files.map(({ parentPath, name }) => join(parentPath, name)).filter((path) => !path.endsWith(`/${MARKER}`));
  const digest = (path: string): string => createHash('sha256').update(readFileSync(path)).digest('hex');
  return Object.fromEntries(paths.sort().map((path) => [path.slice(cwd.length), digest(path)]));
}

const build = (cwd: string) => finished(['build', '--content', 'van'], cwd);

test.each(SEEDS)('the last of many builds is the same to the byte as the first from nothing: journal %i', async (seed) => {
  const random = randomFrom(seed);
  const files: Files = new Map(generateJournal(8, seed));
  await writeEvening(files, random);
  const kept = folderWith({});
  // The first finds nothing to use again: it is from nothing itself.
  layOut(kept, files);
  const first = build(kept);
  expect(first.status, first.stderr).toBe(0);
  const done: string[] = [];
  let compared = 0;
  for (let n = 1; n < Math.min(BUILDS, BUILDS_OF_A_JOURNAL); n += 1) {
    done.push(await editByChance(files, random));
    const clean = folderWith({});
    for (const cwd of [kept, clean]) layOut(cwd, files);
    const [again, anew] = [build(kept), build(clean)];
    const story = done.join(', then ');
    expect(again.status, `${story}\n${again.stderr}\n${anew.stderr}`).toBe(anew.status);
    if (anew.status === 0) {
      compared += 1;
      expect(siteIn(kept), story).toEqual(siteIn(clean));
    } else {
      expect(again.stderr, story).toBe(anew.stderr);
    }
  }
  expect(compared).toBeGreaterThan(0);
});

test('another edition of the program makes everything anew: a page, a style sheet, a script', () => {
  const program = folderWith({});
  for (const name of ['src', 'public', 'package.json', 'astro.config.mjs'])
    cpSync(join(PROGRAM, name), join(program, name), { recursive: true });
  symlinkSync(packagesFolder(), join(program, 'node_modules'), 'junction');
  const cwd = folderWith(JOURNAL);
  const made = (path: string): string => readFileSync(join(cwd, 'dist', path), 'utf8');
  const change = (path: string, from: string, to: string): void => {
    const text = readFileSync(join(program, path), 'utf8');
    expect(text).toContain(from);
    writeFileSync(join(program, path), text.replace(from, to));
  };
  const buildBy = () =>
    spawnSync(process.execPath, [join(program, 'src/cli/asfound.mjs'), 'build', '--content', 'van'], {
      cwd,
      encoding: 'utf8',
      env: envIn(cwd),
    });
  for (const round of [1, 2]) {
    expect(buildBy().status, `round ${round}`).toBe(0);
    expect(made('methods.html')).not.toContain('whether it did');
    if (round === 1) put(cwd, 'van/sessions/2031-03-03-more.md', '---\ndate: 2031-03-03\ntitle: More\n---\n\nMore.\n');
  }
  change('src/pages/methods.astro', 'whether it worked', 'whether it did');
  change('public/css/type.css', '\n:root {', '\n.another { color: red }\n:root {');
  expect(buildBy().status).toBe(0);
  expect(made('methods.html')).toContain('whether it did');
  expect(made('css/site.css')).toContain('.another { color: red }');
});
