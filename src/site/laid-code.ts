/**
 * Kept code as files that Node can load. They lie where they lay for the last build, so that what Node made of them is used
 * again, and nothing is added to what it keeps.
 */
import { readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { writeWhole } from '../disk/write-whole.ts';
import type { Texts } from './edition-store.ts';
import { linkPackages } from './workshop.ts';

/** A build that began before the program was changed may still load what it has not needed yet. */
const LEFT_ALONE_MS = 24 * 60 * 60 * 1000;

/** Code that was loaded remembers the journal it was loaded for, so a process loads from there once. */
let isTaken = false;

/** @returns the folder; null where this process has loaded from there before, or nothing can be written there. @see lay */
export function laidOnce(code: Texts, home: string): string | null {
  if (isTaken || !lay(code, home)) return null;
  isTaken = true;
  return home;
}

/**
 * @param code by path; a name goes with what is in the file, so that two editions may lie beside each other
 * @param home the folder for it; it need not exist. The packages of the program are found from there
 * @returns whether all of it lies there as it was given
 */
export function lay(code: Texts, home: string): boolean {
  try {
    for (const [path, text] of Object.entries(code)) {
      const file = join(home, path);
      if (textIn(file) !== text) writeWhole(file, text);
    }
    linkPackages(home);
    removeOld(code, home);
    return true;
  } catch {
    return false;
  }
}

function textIn(file: string): string | null {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return null;
  }
}

/** Takes away what another edition left, and nothing of the packages, which are linked into the folder. */
function removeOld(code: Texts, home: string): void {
  const ours = new Set(Object.keys(code).map((path) => join(home, path)));
  for (const folder of new Set([...ours].map((file) => dirname(file)))) {
    for (const entry of readdirSync(folder, { withFileTypes: true })) {
      const file = join(folder, entry.name);
      if (entry.isFile() && !ours.has(file) && Date.now() - statSync(file).mtimeMs > LEFT_ALONE_MS) rmSync(file, { force: true });
    }
  }
}
