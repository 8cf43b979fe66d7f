/** Rendered notes kept between runs: one file for a journal, replaced as a whole. */
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

export interface NoteStore {
  /** HTML by key; empty when nothing was kept, or what was kept cannot be read. */
  readonly kept: ReadonlyMap<string, string>;
  /** Keeps these and nothing else. What cannot be written is not kept; that is no error. */
  save(notes: ReadonlyMap<string, string>): void;
}

/**
 * Opens the store of one journal.
 *
 * @param cache the cache folder; it need not exist
 * @param journal the absolute path of the journal folder
 */
export function openNoteStore(cache: string, journal: string): NoteStore {
  const folder = join(cache, 'notes');
  const file = join(folder, `${digest(journal).slice(0, 16)}.json`);
  return {
    kept: readKept(file),
    save: (notes) => {
      try {
        mkdirSync(folder, { recursive: true });
        const beside = `${file}.${process.pid}`;
        writeFileSync(beside, JSON.stringify(Object.fromEntries(notes)));
        renameSync(beside, file);
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
  return digest(JSON.stringify([recipe, body, context]));
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

function readKept(file: string): Map<string, string> {
  try {
    const kept: unknown = JSON.parse(readFileSync(file, 'utf8'));
    if (typeof kept !== 'object' || kept === null) return new Map();
    return new Map(Object.entries(kept).filter((entry): entry is [string, string] => typeof entry[1] === 'string'));
  } catch {
    return new Map();
  }
}

function digest(text: string): string {
  return createHash('sha256').update(text).digest('hex');
}
