/** Files that are either there as a whole or not at all, whatever is killed and whoever writes at the same time. */

import { randomBytes } from 'node:crypto';
import { renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { makeFolder } from './folders.ts';

/** Names of what is being written begin with this. What is left of a killed run can be told by it. */
export const UNFINISHED = 'unfinished-';

/** A name beside `path` that no other run uses. */
export function unfinishedBeside(path: string): string {
  return join(dirname(path), `${UNFINISHED}${process.pid}-${randomBytes(6).toString('hex')}`);
}

/** Whether a name was given by `unfinishedBeside` in a process that no longer runs here. */
export function isLeftOver(name: string): boolean {
  const pid = Number(new RegExp(`^${UNFINISHED}(\\d+)-`).exec(name)?.[1] ?? Number.NaN);
  if (Number.isNaN(pid)) return name.startsWith(UNFINISHED);
  try {
    process.kill(pid, 0);
    return false;
  } catch (error) {
    return (error as { code?: string }).code === 'ESRCH';
  }
}

/** Writes a file by way of another name in the same folder; makes the folder. */
export function writeWhole(path: string, bytes: string | Uint8Array): void {
  makeFolder(dirname(path));
  const unfinished = unfinishedBeside(path);
  try {
    writeFileSync(unfinished, bytes);
    renameSync(unfinished, path);
  } catch (error) {
    rmSync(unfinished, { force: true });
    throw error;
  }
}

/** Renames, and says whether it could: not onto a folder that holds something, nor from where nothing is. */
export function renamed(from: string, to: string): boolean {
  try {
    renameSync(from, to);
    return true;
  } catch {
    return false;
  }
}
