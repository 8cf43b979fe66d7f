/**
 * A journal folder on disk to source texts: the only reader of notes.
 *
 * Read as bytes are `journal.yaml`, `consumables.yaml`, `parts/*.yaml`, `identity/*.yaml`, `drawings/*.svg`, `statements/*.yaml` and every
 * `.md` under `sessions/`;
 * every other file under `sessions/` and `papers/` is listed as an asset. Other folders, and names that begin
 * with a dot, are not the journal's business. The order is that of the paths, whatever the disk says.
 */
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Diagnostic } from '../journal/diagnostics/diagnostic.ts';
import type { Asset, SourceFile, Sources } from '../journal/read/source/sources.ts';
import { reasonOf, stray, tooLarge, unreadable } from './problems.ts';
import { type Found, walk } from './walk.ts';

/** More than any evening fills; such a file is reported and not read. */
export const LARGEST_SOURCE = 1024 * 1024;

/** An asset with what a cache needs to see that it changed. */
export interface LoadedAsset extends Asset {
  readonly mtimeMs: number;
}

export interface LoadedFile extends SourceFile {
  readonly size: number;
  readonly mtimeMs: number;
}

export interface LoadedSources extends Sources {
  /** The absolute path of the journal folder. */
  readonly folder: string;
  readonly files: readonly LoadedFile[];
  readonly assets: readonly LoadedAsset[];
  readonly problems: readonly Diagnostic[];
}

type Role = 'source' | 'asset' | 'stray' | 'ignored';

/** The folders of a journal that are read. */
export const FOLDERS = ['drawings', 'identity', 'papers', 'parts', 'sessions', 'statements'];
const TOP_FILES = new Set(['journal.yaml', 'consumables.yaml']);

/**
 * Reads a journal folder. What is wrong with single files comes back as `problems`.
 *
 * @param folder an existing folder
 * @param before an earlier load of it: files whose size and time are the same are not read again
 * @throws the error of the file system when the folder itself cannot be read
 */
export function loadJournal(folder: string, before: LoadedSources | null = null): LoadedSources {
  const { found, problems } = walk(folder, isEntered);
  const known = new Map((before?.files ?? []).map((file) => [file.path, file]));
  const files: LoadedFile[] = [];
  const assets: LoadedAsset[] = [];
  for (const one of found) {
    const role = roleOf(one.path);
    if (role === 'source') {
      const read = readSource(folder, one, known.get(one.path));
      if ('bytes' in read) files.push(read);
      else problems.push(read);
    } else if (role === 'asset') {
      const read = statAsset(folder, one);
      if ('size' in read) assets.push(read);
      else problems.push(read);
    } else if (role === 'stray') {
      problems.push(stray(one.path));
    }
  }
  return { folder, files: files.sort(byPath), assets: assets.sort(byPath), problems };
}

/** What tells, without reading it, that a file is as it was: its path, bytes, and milliseconds since 1970. */
export type Stamp = Pick<LoadedFile, 'path' | 'size' | 'mtimeMs'>;

/**
 * The files that `loadJournal` would read, in the order of their paths, and nothing of what is in them.
 *
 * @throws the error of the file system when the folder itself cannot be listed
 */
export function stampSources(folder: string): readonly Stamp[] {
  const { found } = walk(folder, isEntered);
  const sources = found.filter(({ path }) => roleOf(path) === 'source');
  const stamped = sources.flatMap(({ path }) => {
    const stat = statSync(join(folder, path), { throwIfNoEntry: false });
    return stat ? [{ path, size: stat.size, mtimeMs: stat.mtimeMs }] : [];
  });
  return stamped.sort(byPath);
}

const isEntered = (path: string): boolean => path.includes('/') || FOLDERS.includes(path);

/** Whether a file is read as a note, a catalogue or a drawing, by its path in the journal. */
export function isSource(path: string): boolean {
  return roleOf(path) === 'source' && path.split('/').every((name) => !name.startsWith('.'));
}

function roleOf(path: string): Role {
  const [top, ...rest] = path.split('/');
  if (rest.length === 0) return TOP_FILES.has(path) ? 'source' : /^(journal|consumables)\.yml$/.test(path) ? 'stray' : 'ignored';
  if (top === 'parts' || top === 'identity') return rest.length === 1 && path.endsWith('.yaml') ? 'source' : 'stray';
  if (top === 'drawings') return rest.length === 1 && path.endsWith('.svg') ? 'source' : 'stray';
  // What is sent to the client may lie beside the statement that it was made of.
  if (top === 'statements') return rest.length === 1 && path.endsWith('.yaml') ? 'source' : 'ignored';
  if (top === 'sessions' && path.endsWith('.md')) return 'source';
  return top === 'sessions' && /\.(?:md|markdown|md\.txt)$/i.test(path) ? 'stray' : 'asset';
}

function readSource(folder: string, found: Found, known: LoadedFile | undefined): LoadedFile | Diagnostic {
  const file = join(folder, found.path);
  try {
    const stat = statSync(file);
    if (!stat.isFile()) return unreadable(found.path, 'it is not an ordinary file');
    const { size, mtimeMs } = stat;
    if (size > LARGEST_SOURCE) return tooLarge(found.path, size);
    if (known && known.size === size && known.mtimeMs === mtimeMs) return known;
    return { path: found.path, bytes: readFileSync(file), size, mtimeMs };
  } catch (error) {
    return unreadable(found.path, reasonOf(error));
  }
}

function statAsset(folder: string, found: Found): LoadedAsset | Diagnostic {
  try {
    const stat = statSync(join(folder, found.path));
    if (!stat.isFile()) return unreadable(found.path, 'it is not an ordinary file');
    return { path: found.path, size: stat.size, mtimeMs: stat.mtimeMs };
  } catch (error) {
    return unreadable(found.path, reasonOf(error));
  }
}

function byPath(a: { readonly path: string }, b: { readonly path: string }): number {
  return a.path < b.path ? -1 : a.path > b.path ? 1 : 0;
}
