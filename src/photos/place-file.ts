/** Puts files into the site: hard links where the disk allows, copies where it does not, each whole or not at all. */

import { constants, copyFileSync, linkSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { makeFolder } from '../disk/folders.ts';
import { UNFINISHED, unfinishedBeside } from '../disk/write-whole.ts';

/**
 * Links a file of the cache to `to`, replacing what is there; does nothing when it is there already.
 *
 * @throws the file system's error when `from` is gone or `to` cannot be written
 */
export function linkInto(from: string, to: string): void {
  if (isLinked(from, to)) return;
  const source = statSync(from);
  const there = statSync(to, { throwIfNoEntry: false });
  if (there && there.ino === source.ino && there.dev === source.dev && source.ino !== 0) return;
  placed(to, (unfinished) => {
    try {
      linkSync(from, unfinished);
    } catch {
      copyFileSync(from, unfinished, constants.COPYFILE_FICLONE);
    }
  });
}

/** Links where there is nothing yet, as in every new site: a link is there as a whole or not at all. */
function isLinked(from: string, to: string): boolean {
  try {
    linkSync(from, to);
    return true;
  } catch {
    return false;
  }
}

/**
 * Removes files that an earlier build placed and this one does not name.
 *
 * @param folder holds placed files only; it need not exist
 * @param keep names that stay
 * @param ours the shape of the names this program gives; others are left alone
 */
export function prune(folder: string, keep: ReadonlySet<string>, ours: RegExp): void {
  const names = statSync(folder, { throwIfNoEntry: false }) ? readdirSync(folder) : [];
  for (const name of names) {
    if (!keep.has(name) && (ours.test(name) || name.startsWith(UNFINISHED))) rmSync(join(folder, name), { force: true });
  }
}

function placed(to: string, write: (unfinished: string) => void): void {
  makeFolder(dirname(to));
  const unfinished = unfinishedBeside(to);
  try {
    write(unfinished);
    renameSync(unfinished, to);
  } finally {
    rmSync(unfinished, { force: true });
  }
}
