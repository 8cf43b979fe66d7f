/** A draft becomes a note: new ones appear as a whole, and no note is written over that changed meanwhile. */
import { existsSync, readFileSync, realpathSync } from 'node:fs';
import { basename, dirname, join, sep } from 'node:path';
import { pathWithin } from '../disk/path-within.ts';
import { IsThere, writeNewFile, writeNewFolder, writeOver } from '../disk/write-new.ts';
import { sessionIdOf } from '../journal/read/read-files.ts';
import { nearestId } from '../journal/schema/fields.ts';
import { readDate } from '../journal/values/date.ts';
import { type Desk, digestAt, digestOf } from './desk.ts';
import type { Draft } from './drafts.ts';
import { changeNote, newNote } from './note-text.ts';
import { NotByForm } from './yaml-edits.ts';

/** A file that was laid by a draft. */
export interface LaidFile {
  /** As the note names it. */
  readonly name: string;
  readonly what: 'picture' | 'paper';
  /** Where it waits. */
  readonly file: string;
}

export type Made =
  | { readonly made: true; readonly path: string }
  /** `theirs` is the note as it lies there now; null when it is gone. */
  | { readonly made: false; readonly why: 'changed'; readonly mine: string; readonly theirs: string | null }
  | { readonly made: false; readonly why: 'no-day' | 'by-hand' };

/** The text that a draft makes, and the path where it belongs. Null where its note cannot be changed from a form. */
export function textOf(desk: Desk, draft: Draft): { readonly path: string; readonly text: string } | null {
  if (draft.corrects === null) return { path: newPath(desk, draft), text: newNote(desk.form, draft) };
  const { path } = draft.corrects;
  const before = noteAt(desk, path);
  try {
    return before === null ? { path, text: newNote(desk.form, draft) } : { path, text: changeNote(before, path, desk.form, draft) };
  } catch (error) {
    if (error instanceof NotByForm) return null;
    throw error;
  }
}

/**
 * @param files what was laid by the draft
 * @throws the file system's error; the note is then as it was, and the draft still there
 */
export function makeNote(desk: Desk, draft: Draft, files: readonly LaidFile[]): Made {
  if (draft.corrects !== null) return correctNote(desk, draft, draft.corrects, files);
  const day = readDate(String(draft.fields.date ?? ''));
  if (!day.ok) return { made: false, why: 'no-day' };
  layPapers(desk, files);
  for (;;) {
    const holds = contentsOf(desk, draft, files);
    const before = madeBefore(desk, draft, holds);
    if (before !== null) return { made: true, path: before };
    const path = newPath(desk, draft);
    keepWithin(desk.folder, join(desk.folder, path));
    try {
      writeNewFolder(dirname(join(desk.folder, path)), holds);
      return { made: true, path };
    } catch (error) {
      // Somebody else took the name: the next one is free.
      if (!(error instanceof IsThere)) throw error;
    }
  }
}

type Contents = ReadonlyMap<string, string | Uint8Array>;

/** What the folder of a new note holds. */
function contentsOf(desk: Desk, draft: Draft, files: readonly LaidFile[]): Contents {
  const pictures = files.filter(({ what }) => what === 'picture').map(({ name, file }) => [name, readFileSync(file)] as const);
  return new Map<string, string | Uint8Array>([...pictures, ['index.md', newNote(desk.form, draft)]]);
}

/** The note that a draft became when it could not be kept that it did: the same to the byte, pictures too, under a name of the draft's. */
function madeBefore(desk: Desk, draft: Draft, holds: Contents): string | null {
  const { taken } = namesFor(desk, draft);
  const isSame = (id: string): boolean =>
    [...holds].every(([name, bytes]) => digestAt(desk.folder, `sessions/${id}/${name}`) === digestOf(bytes));
  const id = taken.find(isSame);
  return id === undefined ? null : noteIn(id);
}

function correctNote(desk: Desk, draft: Draft, { path, digest }: NonNullable<Draft['corrects']>, files: readonly LaidFile[]): Made {
  const becomes = textOf(desk, draft);
  if (becomes === null) return { made: false, why: 'by-hand' };
  if (noteAt(desk, path) === null) return { made: false, why: 'changed', mine: becomes.text, theirs: null };
  const target = keepWithin(desk.folder, pathWithin(desk.folder, path));
  if (digestAt(desk.folder, path) !== digest) return { made: false, why: 'changed', mine: becomes.text, theirs: noteAt(desk, path) };
  layPapers(desk, files);
  for (const { name, file } of files.filter(({ what }) => what === 'picture')) {
    layFile(desk, join(desk.folder, dirname(path), pictureFolder(path) + name), file);
  }
  writeOver(target, becomes.text);
  return { made: true, path };
}

/**
 * @returns where a file lies, or will lie, with every symbolic link on the way to it followed
 * @throws Error where that is not in the journal
 */
function keepWithin(folder: string, file: string): string {
  const there = existsSync(file);
  const real = there ? realpathSync(file) : join(keepWithin(folder, dirname(file)), basename(file));
  const root = realpathSync(folder);
  if (real !== root && !real.startsWith(root + sep)) throw new LeadsOut(`${file} leads out of the journal, by a symbolic link`);
  return real;
}

/** A symbolic link on the way to what would be written leads out of the journal. */
export class LeadsOut extends Error {}

function layPapers(desk: Desk, files: readonly LaidFile[]): void {
  for (const { name, file } of files.filter(({ what }) => what === 'paper')) layFile(desk, join(desk.folder, 'papers', name), file);
}

/** A file that lies there already with the same bytes was laid when this was tried before. */
function layFile(desk: Desk, target: string, file: string): void {
  keepWithin(desk.folder, target);
  const bytes = readFileSync(file);
  try {
    writeNewFile(target, bytes);
  } catch (error) {
    if (!(error instanceof IsThere) || digestOf(readFileSync(target)) !== digestOf(bytes)) throw error;
  }
}

/** The text of a note of the journal; null when there is no such note. */
export function noteAt(desk: Desk, path: string): string | null {
  const found = desk.journal().sources.files.find((file) => file.path === path && path.startsWith('sessions/'));
  return found ? new TextDecoder('utf-8', { ignoreBOM: true }).decode(found.bytes) : null;
}

/** Where a new note goes: a folder named for its day and its title; of a name that is taken, the next one that is free. */
const newPath = (desk: Desk, draft: Draft): string => noteIn(namesFor(desk, draft).free);

const noteIn = (id: string): string => `sessions/${id}/index.md`;

/** The first name that is free for the note of a draft, and those before it. */
function namesFor(desk: Desk, draft: Draft): { readonly taken: readonly string[]; readonly free: string } {
  const date = String(draft.fields.date ?? '');
  const title =
    nearestId(String(draft.fields.title ?? ''))
      ?.slice(0, LONGEST_NAME)
      .replace(/-$/, '') ?? 'evening';
  const name = `${readDate(date).ok ? date : desk.evening()}-${title}`;
  const isTaken = (id: string): boolean => ['', '.md'].some((ending) => existsSync(join(desk.folder, 'sessions', id + ending)));
  const taken: string[] = [];
  let id = name;
  for (let n = 2; isTaken(id); n += 1) {
    taken.push(id);
    id = `${name}-${n}`;
  }
  return { taken, free: id };
}

const LONGEST_NAME = 60;

/** The folder that the pictures of a note lie in, from the note: its own one for a note that shares its folder with others. */
export function pictureFolder(path: string | null): string {
  return path === null || basename(path) === 'index.md' ? '' : `${sessionIdOf(path)}/`;
}
