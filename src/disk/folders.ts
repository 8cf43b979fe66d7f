/** Making folders, and taking them away again. */
import { mkdirSync, rmdirSync, statSync } from 'node:fs';
import { dirname } from 'node:path';

/**
 * Makes a folder and those above it. One at a time from the top: where the system answers that a folder it should
 * make one in is not there, as it does for places that only look like folders, the answer is passed on.
 *
 * @returns the folders that were not there before, outermost first
 * @throws the file system's error
 */
export function makeFolder(path: string): string[] {
  const missing: string[] = [];
  for (let at = path; statSync(at, { throwIfNoEntry: false }) === undefined; at = dirname(at)) {
    missing.unshift(at);
    if (dirname(at) === at) break;
  }
  return missing.filter((folder) => {
    try {
      mkdirSync(folder);
      return true;
    } catch (error) {
      // Another process has made it meanwhile.
      if ((error as { code?: string }).code === 'EEXIST' && statSync(folder, { throwIfNoEntry: false })?.isDirectory()) return false;
      throw error;
    }
  });
}

/** Takes folders away that hold nothing, the last one first. */
export function removeEmpty(folders: readonly string[]): void {
  for (const folder of folders.toReversed()) {
    try {
      rmdirSync(folder);
    } catch {
      return;
    }
  }
}
