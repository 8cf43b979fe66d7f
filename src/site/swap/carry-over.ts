/** Takes what the user put into a site over into the one that takes its place. */
import {
  chmodSync,
  constants,
  copyFileSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readlinkSync,
  renameSync,
  type Stats,
  symlinkSync,
  utimesSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { unfinishedBeside } from '../../disk/write-whole.ts';
import { type Lying, thereAt, withFolders } from './site-folder.ts';

/** A file or folder of the user's lies where the new site has another. Nothing has been changed. */
export class InTheWay extends Error {
  readonly file: string;
  constructor(file: string) {
    super(`${file} is in the way`);
    this.file = file;
  }
}

/**
 * @param users what is not of the site, by `usersOwn`
 * @param next the new site
 * @throws InTheWay for the first thing that cannot lie there too
 */
export function checkNoneInTheWay(users: readonly Lying[], site: string, next: string): void {
  for (const { path, kind } of users) {
    const clashes = withFolders(path).some((step) => {
      const there = thereAt(join(next, step));
      return there !== undefined && !(there.isDirectory() && (step !== path || kind === 'folder'));
    });
    if (clashes) throw new InTheWay(join(site, path));
  }
}

/**
 * Everything: files as they are, by a second name where the disk has such, else as copies; links as links; folders
 * with their modes, empty ones too. What was taken over before and has not changed since is left alone.
 */
export function carryOver(users: readonly Lying[], from: string, to: string): void {
  for (const { path, kind } of users) {
    if (kind === 'folder') mkdirSync(join(to, path), { recursive: true });
    else carryOne(kind, join(from, path), join(to, path));
  }
  // Last, and the inner ones first: a folder may be one that takes no writing.
  for (const { path, kind } of users.toReversed()) {
    if (kind === 'folder') chmodSync(join(to, path), lstatSync(join(from, path)).mode & 0o7777);
  }
}

function carryOne(kind: Lying['kind'], from: string, to: string): void {
  if (isSame(lstatSync(from), thereAt(to))) return;
  mkdirSync(dirname(to), { recursive: true });
  const unfinished = unfinishedBeside(to);
  if (kind === 'link') symlinkSync(readlinkSync(from), unfinished);
  else linkOrCopy(kind, from, unfinished);
  renameSync(unfinished, to);
}

function linkOrCopy(kind: Lying['kind'], from: string, to: string): void {
  try {
    linkSync(from, to);
  } catch (error) {
    // A pipe would be waited for.
    if (kind !== 'file') throw error;
    copyFileSync(from, to, constants.COPYFILE_FICLONE);
    const { atime, mtime } = lstatSync(from);
    utimesSync(to, atime, mtime);
  }
}

function isSame(a: Stats, b: Stats | undefined): boolean {
  if (b === undefined) return false;
  if (a.dev === b.dev && a.ino === b.ino) return true;
  return a.isFile() && b.isFile() && a.size === b.size && Math.floor(a.mtimeMs) === Math.floor(b.mtimeMs);
}
