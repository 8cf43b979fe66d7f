/** Film that lies in the journal goes into the site, cleaned of what its camera wrote: what its pages link to plays from a disk. */
import { createHash } from 'node:crypto';
import { constants, copyFileSync, existsSync, mkdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Journal } from '../journal/model.ts';
import { pathWithin } from '../load/path-within.ts';
import { cleanFilm } from '../photos/clean-film.ts';
import { clipsOf } from '../photos/clips.ts';
import { linkInto, prune } from '../photos/place-file.ts';
import { unfinishedBeside } from '../photos/write-whole.ts';
import { fileAddress } from './addresses.ts';

/** The clips of a journal that are files of it, each once. */
export function clipFiles(journal: Journal): readonly string[] {
  return [...clipsOf(journal).keys()];
}

/** Raise it when a film is cleaned otherwise. */
const EDITION = 2;
const KEY = /^[0-9a-f]{24}$/;

/**
 * Films are large and seldom change: each is copied once, into the cache, and linked from there into every new
 * site. The site never shares a file with the journal, so that nothing done to it reaches the restorer's own.
 *
 * @param folder the journal folder
 * @throws the file system's error when a clip cannot be read or the site cannot be written
 */
export function placeClips(journal: Journal, folder: string, cache: string, into: string): void {
  const home = join(cache, 'film');
  const keys = new Set<string>();
  for (const path of clipFiles(journal)) {
    const from = join(folder, path);
    const { size, mtimeMs } = statSync(from);
    const key = createHash('sha256').update(`${EDITION}\0${path}\0${size}\0${mtimeMs}`).digest('hex').slice(0, 24);
    keys.add(key);
    copyOnce(from, join(home, key), home);
    linkInto(join(home, key), pathWithin(into, fileAddress(path)));
  }
  prune(home, keys, KEY);
}

function copyOnce(from: string, to: string, home: string): void {
  if (existsSync(to)) return;
  mkdirSync(home, { recursive: true });
  const unfinished = unfinishedBeside(to);
  try {
    copyFileSync(from, unfinished, constants.COPYFILE_FICLONE);
    cleanFilm(unfinished);
    renameSync(unfinished, to);
  } finally {
    rmSync(unfinished, { force: true });
  }
}
