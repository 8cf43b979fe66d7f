/** A worker that renders notes: a batch in, their HTML out, in order. */
import { parentPort } from 'node:worker_threads';
import type { NoteContext } from './note-context.ts';
import { renderNote } from './render.ts';

export interface Job {
  readonly body: string;
  readonly context: NoteContext;
}

parentPort?.on('message', (jobs: readonly Job[]) => {
  parentPort?.postMessage(jobs.map(({ body, context }) => renderNote(body, context).html));
});
