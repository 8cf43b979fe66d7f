/**
 * What was made of pictures, papers and film, to be used again. An entry is a folder named by the key of what it was
 * made from; it appears by one rename when it is complete, so that a kill leaves no half of it and two builds at
 * once do not disturb each other: the second to finish throws its own away. Everything is by content, so nothing in it
 * can be out of date; and it is looked at before each use, since the site that it is linked into may be written to.
 */

import { createHash } from 'node:crypto';
import { closeSync, mkdirSync, openSync, readdirSync, readSync, rmSync, statSync, utimesSync } from 'node:fs';
import { join } from 'node:path';
import { makeFolder } from './folders.ts';
import { readKept, writeKept } from './kept.ts';
import { remove, type Swept, sweepFolders } from './sweep.ts';
import { renamed, unfinishedBeside } from './write-whole.ts';

export interface CacheEntry {
  /** The folder that holds its files. */
  readonly folder: string;
  /** Mean colour, `#rrggbb`; of what has none, any. */
  readonly colour: string;
}

/** What an entry tells of itself besides its files. */
export type EntryFacts = Omit<CacheEntry, 'folder'>;

export interface EntryCache {
  /** The entry when every one of the named files is as it was written, else null. */
  find(key: string, names: readonly string[]): CacheEntry | null;
  /** Makes an entry by filling a new folder; what was there under the key is replaced. */
  make(key: string, fill: (folder: string) => Promise<EntryFacts>): Promise<CacheEntry>;
  /** Removes what a killed run left, then the entries not used for longest, until the rest fits. Entries found or made by this run stay. */
  sweep(mostBytes: number): Swept;
}

/** Size, time and number of a file on its disk tell one that was written to; a copy of the cache has others, and is told by its digest. */
type Stamp = readonly [size: number, mtimeMs: number, inode: number, sha256: string];

interface Manifest extends EntryFacts {
  readonly files: Readonly<Record<string, Stamp>>;
}

const MANIFEST = 'entry.json';
/** The time of last use is not written more often than this. */
const USE_NOTED_MS = 12 * 60 * 60 * 1000;

/**
 * @param cache the cache folder
 * @param shelf the folder in it that the entries are in
 */
export function openEntryCache(cache: string, shelf: 'pictures' | 'film'): EntryCache {
  const home = join(cache, shelf);
  const used = new Set<string>();
  const find: EntryCache['find'] = (key, names) => {
    const folder = join(home, key);
    const manifest = manifestIn(folder, key);
    if (manifest === null || !names.every((name) => isAsWritten(folder, name, manifest))) return null;
    used.add(key);
    noteUse(folder);
    return { folder, colour: manifest.colour };
  };
  const make: EntryCache['make'] = async (key, fill) => {
    makeFolder(home);
    const folder = join(home, key);
    const unfinished = unfinishedBeside(folder);
    mkdirSync(unfinished);
    try {
      const facts = await fill(unfinished);
      writeKept(join(unfinished, MANIFEST), whatIs(key), { ...facts, files: stampsIn(unfinished) } satisfies Manifest);
      moveIn(unfinished, folder, key);
      used.add(key);
      return { folder, ...facts };
    } finally {
      rmSync(unfinished, { recursive: true, force: true });
    }
  };
  return { find, make, sweep: (mostBytes) => sweepFolders(home, used, mostBytes, bytesIn) };
}

/** Raise the number when entries are kept otherwise. */
const whatIs = (key: string): string => `entry 2 ${key}`;

function manifestIn(folder: string, key: string): Manifest | null {
  return (readKept(join(folder, MANIFEST), whatIs(key)) as Manifest | undefined) ?? null;
}

function stampsIn(folder: string): Manifest['files'] {
  return Object.fromEntries(
    readdirSync(folder).map((name): [string, Stamp] => {
      const { size, mtimeMs, ino } = statSync(join(folder, name));
      return [name, [size, mtimeMs, ino, digestOf(join(folder, name))]];
    }),
  );
}

function isAsWritten(folder: string, name: string, { files }: Manifest): boolean {
  const there = statSync(join(folder, name), { throwIfNoEntry: false });
  const written = Object.hasOwn(files, name) ? files[name] : undefined;
  if (there === undefined || written === undefined || there.size !== written[0]) return false;
  return (there.mtimeMs === written[1] && there.ino === written[2]) || digestOf(join(folder, name)) === written[3];
}

/** SHA-256, a piece at a time: films are larger than memory. */
function digestOf(file: string): string {
  const hash = createHash('sha256');
  const open = openSync(file, 'r');
  try {
    const piece = Buffer.alloc(1 << 20);
    for (let read = readSync(open, piece); read > 0; read = readSync(open, piece)) hash.update(piece.subarray(0, read));
  } finally {
    closeSync(open);
  }
  return hash.digest('hex');
}

/**
 * A folder cannot be renamed onto one that holds something. What another run moved in meanwhile was made of the
 * same bytes by the same recipe, so it stays if it is sound; if not, it goes aside.
 */
function moveIn(unfinished: string, folder: string, key: string): void {
  if (renamed(unfinished, folder) || isSound(folder, key)) return;
  remove(folder);
  if (!renamed(unfinished, folder) && !isSound(folder, key)) throw new Error(`${folder} cannot be written`);
}

function isSound(folder: string, key: string): boolean {
  const manifest = manifestIn(folder, key);
  return manifest !== null && Object.keys(manifest.files).every((name) => isAsWritten(folder, name, manifest));
}

function noteUse(folder: string): void {
  const now = Date.now();
  try {
    if (Math.abs(now - statSync(folder).mtimeMs) > USE_NOTED_MS) utimesSync(folder, now / 1000, now / 1000);
  } catch {
    // It was swept away by another run; whoever links from it will notice.
  }
}

function bytesIn(folder: string): number {
  const names = readdirSync(folder).filter((name) => name !== MANIFEST);
  return names.reduce((sum, name) => sum + (statSync(join(folder, name), { throwIfNoEntry: false })?.size ?? 0), 0);
}
