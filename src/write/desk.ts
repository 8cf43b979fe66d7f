/** The journal as it lies on disk while it is written to: read again where it has changed, checked with a draft in its place. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { clearBegun } from '../disk/clear-begun.ts';
import type { Diagnostic } from '../journal/diagnostics/diagnostic.ts';
import type { Place } from '../journal/model.ts';
import { type Compiled, compileJournal } from '../journal/pipeline.ts';
import type { JournalRecord } from '../journal/record.ts';
import { moves } from '../journal/replay/actions.ts';
import { sessionSchema } from '../journal/schema/session.ts';
import { type LoadedSources, loadJournal } from '../load/load.ts';
import { type FormField, formOf } from './form.ts';

export interface DeskOptions {
  /** The journal folder. */
  readonly folder: string;
  /** The cache folder; drafts lie in it. */
  readonly cache: string;
  /** The day of today. */
  today(): string;
  /** The day of a note that is begun now. */
  evening(): string;
  readonly form?: readonly FormField[];
}

export interface Desk {
  readonly folder: string;
  readonly cache: string;
  readonly form: readonly FormField[];
  today(): string;
  evening(): string;
  /** The journal as it is now. */
  journal(): Opened;
  /** What is wrong with a note when it has this text, and what is wrong elsewhere for its sake. */
  problemsWith(path: string, text: string, files: readonly string[]): DraftChecked;
}

export interface DraftChecked {
  readonly diagnostics: readonly Diagnostic[];
  /** Entries that take a part off or here and do not say where it lies, by their places. */
  readonly unplaced: readonly Place[];
}

export interface Opened extends Compiled {
  readonly sources: LoadedSources;
}

export function openDesk({ folder, cache, today, evening, form = formOf(sessionSchema) }: DeskOptions): Desk {
  clearBegun(['sessions', 'papers'].map((name) => join(folder, name)));
  let opened: Opened | null = null;
  const journal = (): Opened => {
    const sources = loadJournal(folder, opened?.sources ?? null);
    if (opened === null || !isSame(opened.sources, sources)) opened = { ...compileJournal(sources, { today: today() }), sources };
    return opened;
  };
  return {
    folder,
    cache,
    form,
    today,
    evening,
    journal,
    problemsWith(path, text, files) {
      const { sources, diagnostics } = journal();
      const known = new Set(diagnostics.filter(({ place }) => place.file !== path).map(sayingOf));
      const after = compileJournal(withDraft(sources, path, text, files), { today: today() });
      return {
        diagnostics: after.diagnostics.filter((each) => each.place.file === path || !known.has(sayingOf(each))),
        unplaced: after.record === null ? [] : unplacedIn(after.record, path),
      };
    },
  };
}

/** The notes may leave it out, and then nobody knows where to look for the part. */
function unplacedIn({ journal, history }: JournalRecord, path: string): Place[] {
  const id = journal.sessions.find(({ file }) => file === path)?.id;
  const nowhere = history.deeds.filter(({ session, to, from }) => session === id && to.at === 'stores' && to.store === null && to !== from);
  return [...new Set(nowhere.filter(({ entry }) => entry.to === null && entry.did.some(moves)).map(({ entry }) => entry.place))];
}

/** SHA-256 of a file of the journal, in hexadecimal; null when it is not there. */
export function digestAt(folder: string, path: string): string | null {
  try {
    return digestOf(readFileSync(join(folder, path)));
  } catch (error) {
    if ((error as { code?: string }).code === 'ENOENT') return null;
    throw error;
  }
}

export function digestOf(bytes: string | Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}

function withDraft(sources: LoadedSources, path: string, text: string, files: readonly string[]): LoadedSources {
  const bytes = new TextEncoder().encode(text);
  const draft = { path, bytes, size: bytes.length, mtimeMs: 0 };
  const others = sources.files.filter((file) => file.path !== path);
  const added = files.filter((file) => !sources.assets.some((asset) => asset.path === file));
  return {
    ...sources,
    files: [...others, draft].sort(byPath),
    assets: [...sources.assets, ...added.map((file) => ({ path: file, size: 1, mtimeMs: 0 }))].sort(byPath),
  };
}

function isSame(before: LoadedSources, after: LoadedSources): boolean {
  const same = (a: readonly Stamped[], b: readonly Stamped[]): boolean =>
    a.length === b.length && a.every((one, n) => one.path === b[n]?.path && one.size === b[n]?.size && one.mtimeMs === b[n]?.mtimeMs);
  return same(before.files, after.files) && same(before.assets, after.assets);
}

interface Stamped {
  readonly path: string;
  readonly size: number;
  readonly mtimeMs: number;
}

function byPath(a: { readonly path: string }, b: { readonly path: string }): number {
  return a.path < b.path ? -1 : a.path > b.path ? 1 : 0;
}

function sayingOf({ code, place, message }: Diagnostic): string {
  return `${code} ${place.file} ${message}`;
}
