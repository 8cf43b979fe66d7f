/** A new journal, into a folder that is empty or not there yet, so that a kill leaves nothing that the next try would stumble on. */
import { existsSync, lstatSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { makeFolder, removeEmpty } from '../disk/folders.ts';
import { fill, hiddenBeside, IsThere } from '../disk/write-new.ts';
import { removeLeftOvers } from '../disk/write-whole.ts';

/** All of a journal that has not come to its place yet. It is complete as soon as it has this name. */
const BEGUN = '.asfound-begun';

/** Whether a journal may be begun there: there is nothing, or what a kill left of one that was. */
export function mayBegin(folder: string): boolean {
  if (!existsSync(folder)) return true;
  const there = readdirSync(folder).filter((name) => !name.startsWith('.unfinished-'));
  return there.length === 0 || there.includes(BEGUN);
}

/**
 * Writes the files beside each other, then puts them into their place, what makes the folder a journal last.
 *
 * @param files by their paths; those of an earlier try that was complete stay as they are
 * @throws IsThere; the file system's error; and then nothing has changed
 */
export function beginJournal(folder: string, files: ReadonlyMap<string, string>): void {
  const made = makeFolder(folder);
  const unfinished = hiddenBeside(join(folder, 'journal'));
  const begun = join(folder, BEGUN);
  try {
    removeLeftOvers(folder);
    if (!existsSync(begun)) {
      fill(unfinished, files);
      renameSync(unfinished, begun);
    }
  } catch (error) {
    rmSync(unfinished, { recursive: true, force: true });
    removeEmpty(made);
    throw error;
  }
  const names = readdirSync(begun).sort((a, b) => Number(a === 'journal.yaml') - Number(b === 'journal.yaml'));
  for (const name of names) {
    if (lstatSync(join(folder, name), { throwIfNoEntry: false })) throw new IsThere(join(folder, name));
    renameSync(join(begun, name), join(folder, name));
  }
  rmSync(begun, { recursive: true, force: true });
}
