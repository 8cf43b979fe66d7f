/** All notes of a record to HTML: from the store what is unchanged, the rest rendered beside the caller's work when it pays. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { SessionId } from '../journal/model.ts';
import type { JournalRecord } from '../journal/record.ts';
import { keptIn } from '../journal/values/once.ts';
import type { PicturePlan } from '../photos/plan.ts';
import { noteContexts } from './note-context.ts';
import { type NoteStore, noteKey, recipeDigest } from './note-store.ts';
import { renderNote } from './render.ts';
import type { Job } from './render-worker.ts';

/** A worker takes about as long to start as this many notes take to render. */
const NOTES_PER_WORKER = 250;
/** Each takes some fifty megabytes. */
const MOST_WORKERS = 4;
/** Small enough that the workers end together. */
const BATCH = 50;

export interface RenderedNotes {
  readonly html: ReadonlyMap<SessionId, string>;
  /** How many were not in the store. */
  readonly rendered: number;
  /** The whole store as it now should be, by key. */
  readonly kept: ReadonlyMap<string, string>;
}

/**
 * Renders every note of a record. Nothing is saved: `kept` is for the caller to save.
 *
 * @param store what earlier runs kept
 * @param threads how many threads at most, the caller's among them; by default one a core
 */
export async function renderNotes(
  record: JournalRecord,
  plan: PicturePlan,
  store: Pick<NoteStore, 'kept'>,
  threads: number = availableParallelism(),
): Promise<RenderedNotes> {
  const contextOf = noteContexts(record, plan);
  const recipe = recipeDigest();
  const keys: string[] = [];
  const missing = new Map<string, Job>();
  for (const session of record.journal.sessions) {
    const context = contextOf(session);
    const key = noteKey(recipe, session.body, context);
    keys.push(key);
    if (!store.kept.has(key)) missing.set(key, { body: session.body, context });
  }
  const made = await renderJobs([...missing.values()], threads);
  const fresh = new Map([...missing.keys()].map((key, i) => [key, made[i] ?? '']));
  const kept = new Map(keys.map((key) => [key, fresh.get(key) ?? store.kept.get(key) ?? '']));
  const html = new Map(record.journal.sessions.map((session, i) => [session.id, kept.get(keys[i] ?? '') ?? '']));
  return { html, rendered: fresh.size, kept };
}

/**
 * Renders a note when it is asked for.
 *
 * @param kept notes by key; what is rendered is added
 */
export function notesOnDemand(record: JournalRecord, plan: PicturePlan, kept: Map<string, string>): (session: SessionId) => string {
  const contextOf = noteContexts(record, plan);
  const sessions = new Map(record.journal.sessions.map((session) => [session.id, session]));
  return (id) => {
    const session = sessions.get(id);
    if (session === undefined) return '';
    const context = contextOf(session);
    return keptIn(kept, noteKey(recipeDigest(), session.body, context), () => renderNote(session.body, context).html);
  };
}

/** HTML of each job, in order. The caller's thread is left to go on. */
async function renderJobs(jobs: readonly Job[], threads: number): Promise<string[]> {
  const workers = Math.min(threads - 1, Math.floor(jobs.length / NOTES_PER_WORKER), MOST_WORKERS);
  if (workers < 1) return jobs.map(({ body, context }) => renderNote(body, context).html);
  const batches = Array.from({ length: Math.ceil(jobs.length / BATCH) }, (_, i) => jobs.slice(i * BATCH, (i + 1) * BATCH));
  const results: string[][] = [];
  let next = 0;
  const take = (): number | null => (next < batches.length ? next++ : null);
  await Promise.all(Array.from({ length: workers }, () => workThrough(batches, take, results)));
  return results.flat();
}

/** One worker takes batch after batch until there is none left. */
async function workThrough(batches: readonly (readonly Job[])[], take: () => number | null, results: string[][]): Promise<void> {
  const worker = new Worker(new URL('./render-worker.ts', import.meta.url));
  try {
    await new Promise<void>((resolve, reject) => {
      let current = take();
      const send = (): void => (current === null ? resolve() : worker.postMessage(batches[current]));
      worker.on('message', (html: string[]) => {
        if (current !== null) results[current] = html;
        current = take();
        send();
      });
      worker.on('error', reject);
      send();
    });
  } finally {
    await worker.terminate();
  }
}
