/** A folder for the length of a run, among the temporary ones of the system. */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { isRunningHere } from './write-whole.ts';

/**
 * Makes an empty folder, and takes away those of the same name that killed runs left.
 *
 * @param name what is done in it: `archive`
 * @param among the folder of temporary folders
 */
export function makeRoom(name: string, among: string = tmpdir()): string {
  const ours = new RegExp(`^asfound-${name}-(\\d+)-`);
  for (const other of readdirSync(among)) {
    const pid = Number(ours.exec(other)?.[1] ?? process.pid);
    if (pid !== process.pid && !isRunningHere(pid)) removed(join(among, other));
  }
  return mkdtempSync(join(among, `asfound-${name}-${process.pid}-`));
}

/** Somebody else's is left. */
function removed(folder: string): void {
  try {
    rmSync(folder, { recursive: true, force: true });
  } catch {
    // It is not ours to take away.
  }
}
