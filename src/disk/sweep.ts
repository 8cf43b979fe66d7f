/** Keeps a cache within bounds, and takes away what killed runs left in it. */

import { readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { makeFolder } from './folders.ts';
import { isLeftOver, renamed, UNFINISHED, unfinishedBeside } from './write-whole.ts';

export interface Swept {
  readonly removed: number;
  /** What the cache holds after it. */
  readonly bytes: number;
}

interface Held {
  readonly name: string;
  readonly bytes: number;
  /** Milliseconds since 1970. */
  readonly lastUse: number;
}

const KEY = /^[0-9a-f]{16}$/u;
/** Another run may be filling a folder, or linking from an entry, for so long. */
const LEFT_ALONE_MS = 60 * 60 * 1000;

/**
 * Removes leftovers, then the entries that were not used for longest, until the rest fits.
 *
 * @param home the folder of the entries
 * @param used keys that stay whatever their size
 * @param mostBytes what all entries together may take
 * @param bytesOf the size of an entry's folder
 */
export function sweepFolders(home: string, used: ReadonlySet<string>, mostBytes: number, bytesOf: (folder: string) => number): Swept {
  makeFolder(home);
  const held = readdirSync(home).flatMap((name) => measured(home, name, bytesOf));
  const old = held.filter((one) => Math.abs(Date.now() - one.lastUse) > LEFT_ALONE_MS);
  const leftovers = old.filter((one) => isLeftOver(one.name));
  const unused = old.filter((one) => KEY.test(one.name) && !used.has(one.name)).sort((a, b) => a.lastUse - b.lastUse);
  for (const one of leftovers) remove(join(home, one.name));
  let bytes = held.reduce((sum, one) => sum + one.bytes, 0);
  let removed = leftovers.length;
  for (const one of unused) {
    if (bytes <= mostBytes) break;
    remove(join(home, one.name));
    bytes -= one.bytes;
    removed += 1;
  }
  return { removed, bytes };
}

/** A folder or file vanishes in one step, and is emptied after that. */
export function remove(path: string): void {
  const aside = unfinishedBeside(path);
  renamed(path, aside);
  rmSync(aside, { recursive: true, force: true });
}

function measured(home: string, name: string, bytesOf: (folder: string) => number): Held[] {
  const stat = statSync(join(home, name), { throwIfNoEntry: false });
  if (stat === undefined) return [];
  const bytes = KEY.test(name) ? bytesOf(join(home, name)) : 0;
  return KEY.test(name) || name.startsWith(UNFINISHED) ? [{ name, bytes, lastUse: stat.mtimeMs }] : [];
}
