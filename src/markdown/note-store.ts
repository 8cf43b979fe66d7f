/** Rendered notes kept between runs: one file for a journal, replaced as a whole. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readKept, writeKept } from '../disk/kept.ts';

export interface NoteStore {
  /** HTML by key; empty when nothing was kept, or what was kept cannot be read. */
  readonly kept: ReadonlyMap<string, string>;
  /** Keeps these and nothing else. What cannot be written is not kept; that is no error. */
  save(notes: ReadonlyMap<string, string>): void;
}

/** Raise the number when notes are kept otherwise. */
const WHAT = 'notes 2';

/**
 * Opens the store of one journal.
 *
 * @param cache the cache folder; it need not exist
 * @param journal the absolute path of the journal folder
 */
export function openNoteStore(cache: string, journal: string): NoteStore {
  const file = join(cache, 'notes', `${digest(journal).slice(0, 16)}.json`);
  return {
    kept: new Map(readKept(file, WHAT) as [string, string][] | undefined),
    save: (notes) => {
      try {
        writeKept(file, WHAT, [...notes]);
      } catch {
        // A cache that cannot be written costs time and nothing else.
      }
    },
  };
}

/** A store that keeps nothing. */
export const NO_STORE: NoteStore = { kept: new Map(), save: () => undefined };

/** The key of a rendered note: the recipe, the prose and all that it names. */
export function noteKey(recipe: string, body: string, context: unknown): string {
  return digest(JSON.stringify([recipe, body, context], (_, value) => (value instanceof Map ? [...value] : value)));
}

let recipe: string | null = null;

/** Changes whenever the code of this folder or a library does. Worked out once: a process keeps the code it began with. */
export function recipeDigest(): string {
  recipe ??= digestOfCode();
  return recipe;
}

function digestOfCode(): string {
  const here = fileURLToPath(new URL('.', import.meta.url));
  const hash = createHash('sha256');
  for (const name of readdirSync(here).sort()) hash.update(readFileSync(join(here, name)));
  try {
    hash.update(readFileSync(new URL('../../package-lock.json', import.meta.url)));
  } catch {
    hash.update('no lockfile');
  }
  return hash.digest('hex');
}

function digest(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
