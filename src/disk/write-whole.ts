/** Files that are either there as a whole or not at all, whatever is killed and whoever writes at the same time. */

import { randomBytes } from 'node:crypto';
import { readdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
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
  return Number.isNaN(pid) ? name.startsWith(UNFINISHED) : !isRunningHere(pid);
}

/** Whether a process of this machine runs. */
export function isRunningHere(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return (error as { code?: string }).code !== 'ESRCH';
  }
}

const WHOLE_NAME = new RegExp(`^(?:\\.${UNFINISHED}(\\d+)-[0-9a-z]+|${UNFINISHED}(\\d+)-[0-9a-f]{12})$`);

/** Takes away what processes that are gone had begun in a folder, hidden or not; what only begins like such a name is somebody's own. */
export function removeLeftOvers(folder: string): void {
  for (const name of readdirSync(folder)) {
    const [, hidden, open] = WHOLE_NAME.exec(name) ?? [];
    const pid = hidden ?? open;
    if (pid !== undefined && !isRunningHere(Number(pid))) rmSync(join(folder, name), { recursive: true, force: true });
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
