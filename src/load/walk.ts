/** The files of a journal folder, with symbolic links followed only where they stay inside it. */
import { type Dirent, readdirSync, realpathSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';
import type { Diagnostic } from '../journal/diagnostics/diagnostic.ts';
import { leadsOut, reasonOf, unreadable } from './problems.ts';

/** A file, by its path from the journal folder, parts joined by `/`. */
export interface Found {
  readonly path: string;
}

interface Walk {
  readonly root: string;
  readonly realRoot: string;
  readonly enters: (path: string) => boolean;
  readonly found: Found[];
  readonly problems: Diagnostic[];
}

/**
 * Lists every file under a folder; names that begin with a dot are passed over.
 *
 * @param folder where to start
 * @param enters whether a folder, by its path from the start, is looked into
 * @returns the files, and what could not be followed or listed
 * @throws the error of the file system when the folder itself cannot be listed
 */
export function walk(folder: string, enters: (path: string) => boolean): { found: Found[]; problems: Diagnostic[] } {
  const state: Walk = { root: folder, realRoot: realpathSync(folder), enters, found: [], problems: [] };
  list(state, '', [state.realRoot], readdirSync(folder, { withFileTypes: true }));
  return { found: state.found, problems: state.problems };
}

function list(state: Walk, under: string, chain: readonly string[], entries: readonly Dirent[]): void {
  for (const entry of entries) {
    if (entry.name.startsWith('.')) continue;
    const path = under === '' ? entry.name : `${under}/${entry.name}`;
    if (/\p{Cc}/u.test(entry.name) && (path.includes('/') || state.enters(path))) {
      state.problems.push(unreadable(path, 'its name holds a control character'));
      continue;
    }
    if (entry.isSymbolicLink()) follow(state, path, chain);
    else if (entry.isDirectory()) enter(state, path, chain);
    else state.found.push({ path });
  }
}

function enter(state: Walk, path: string, chain: readonly string[]): void {
  if (!state.enters(path)) return;
  try {
    const entries = readdirSync(join(state.root, path), { withFileTypes: true });
    list(state, path, chain, entries);
  } catch (error) {
    state.problems.push(unreadable(path, reasonOf(error)));
  }
}

function follow(state: Walk, path: string, chain: readonly string[]): void {
  if (!path.includes('/') && !state.enters(path) && !path.endsWith('.yaml')) return;
  try {
    const real = realpathSync(join(state.root, path));
    const here = [...chain, realpathSync(join(state.root, path, '..'))];
    if (real !== state.realRoot && !real.startsWith(state.realRoot + sep)) state.problems.push(leadsOut(path));
    else if (!statSync(real).isDirectory()) state.found.push({ path });
    else if (holdsAny(real, here)) state.problems.push(unreadable(path, 'it is a link to a folder that it lies in'));
    else enter(state, path, [...here, real]);
  } catch (error) {
    state.problems.push(unreadable(path, reasonOf(error)));
  }
}

/** A link to one of the folders that it lies in would be walked for ever. */
function holdsAny(real: string, folders: readonly string[]): boolean {
  return folders.some((folder) => folder === real || folder.startsWith(real + sep));
}
