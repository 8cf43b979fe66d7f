/**
 * Renderings that can be used again. An entry is a folder named by the key of its picture; it appears by one
 * rename when it is complete, so that a kill leaves no half of it and two builds at once do not disturb each
 * other: the second to finish throws its own away. Everything is by content, so nothing in it can be out of date.
 */
import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { remove, type Swept, sweepFolders } from './sweep.ts';
import { renamed, unfinishedBeside } from './write-whole.ts';

export interface CacheEntry {
  /** The folder that holds its files. */
  readonly folder: string;
  /** Mean colour, `#rrggbb`. */
  readonly colour: string;
}

/** What a rendering tells of itself besides its files. */
export type EntryFacts = Omit<CacheEntry, 'folder'>;

export interface PictureCache {
  /** The entry when every one of the named files is as it was written, else null. */
  find(key: string, names: readonly string[]): CacheEntry | null;
  /** Makes an entry by filling a new folder; what was there under the key is replaced. */
  make(key: string, fill: (folder: string) => Promise<EntryFacts>): Promise<CacheEntry>;
  /** Removes what a killed run left, then the entries not used for longest, until the rest fits. Entries found or made by this run stay. */
  sweep(mostBytes: number): Swept;
}

interface Manifest extends EntryFacts {
  /** Size and time of each file, to see one that was written over in the site it is linked into. */
  readonly files: Readonly<Record<string, readonly [size: number, mtimeSeconds: number]>>;
}

const MANIFEST = 'entry.json';
/** The time of last use is not written more often than this. */
const USE_NOTED_MS = 12 * 60 * 60 * 1000;

/** @param cache the cache folder */
export function openPictureCache(cache: string): PictureCache {
  const home = join(cache, 'pictures');
  const used = new Set<string>();
  const find: PictureCache['find'] = (key, names) => {
    const folder = join(home, key);
    const manifest = readManifest(folder);
    if (manifest === null || !names.every((name) => isAsWritten(folder, name, manifest))) return null;
    used.add(key);
    noteUse(folder);
    return { folder, colour: manifest.colour };
  };
  const make: PictureCache['make'] = async (key, fill) => {
    mkdirSync(home, { recursive: true });
    const folder = join(home, key);
    const unfinished = unfinishedBeside(folder);
    mkdirSync(unfinished);
    try {
      const facts = await fill(unfinished);
      writeFileSync(join(unfinished, MANIFEST), JSON.stringify({ ...facts, files: stamps(unfinished) } satisfies Manifest));
      moveIn(unfinished, folder);
      used.add(key);
      return { folder, ...facts };
    } finally {
      rmSync(unfinished, { recursive: true, force: true });
    }
  };
  return { find, make, sweep: (mostBytes) => sweepFolders(home, used, mostBytes, bytesOf) };
}

function readManifest(folder: string): Manifest | null {
  try {
    return JSON.parse(readFileSync(join(folder, MANIFEST), 'utf8')) as Manifest;
  } catch {
    return null;
  }
}

function stamps(folder: string): Manifest['files'] {
  return Object.fromEntries(readdirSync(folder).map((name) => [name, stampOf(join(folder, name))]));
}

/** Whole seconds: copies of a cache folder often keep no finer time. */
function stampOf(file: string): readonly [number, number] {
  const { size, mtimeMs } = statSync(file);
  return [size, Math.floor(mtimeMs / 1000)];
}

function isAsWritten(folder: string, name: string, manifest: Manifest): boolean {
  const stat = statSync(join(folder, name), { throwIfNoEntry: false });
  const written = manifest.files[name];
  return stat !== undefined && written !== undefined && stat.size === written[0] && Math.floor(stat.mtimeMs / 1000) === written[1];
}

/**
 * A folder cannot be renamed onto one that holds something. What another run moved in meanwhile was made of the
 * same bytes by the same recipe, so it stays if it is sound; if not, it goes aside.
 */
function moveIn(unfinished: string, folder: string): void {
  if (renamed(unfinished, folder) || isSound(folder)) return;
  remove(folder);
  if (!renamed(unfinished, folder) && !isSound(folder)) throw new Error(`${folder} cannot be written`);
}

function isSound(folder: string): boolean {
  const manifest = readManifest(folder);
  return manifest !== null && Object.keys(manifest.files).every((name) => isAsWritten(folder, name, manifest));
}

function noteUse(folder: string): void {
  const now = Date.now();
  try {
    if (now - statSync(folder).mtimeMs > USE_NOTED_MS) utimesSync(folder, now / 1000, now / 1000);
  } catch {
    // It was swept away by another run; whoever links from it will notice.
  }
}

function bytesOf(folder: string): number {
  return Object.values(readManifest(folder)?.files ?? {}).reduce((sum, [size]) => sum + size, 0);
}
