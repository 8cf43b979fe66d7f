/** The thread of a file writer: batches in, a word back for each when it is written. Its first error ends it. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { parentPort } from 'node:worker_threads';
import type { NewFile } from './file-writer.ts';

const folders = new Set<string>();

parentPort?.on('message', (batch: readonly NewFile[]) => {
  for (const [path, bytes] of batch) {
    const folder = dirname(path);
    if (!folders.has(folder)) mkdirSync(folder, { recursive: true });
    folders.add(folder);
    writeFileSync(path, bytes, { flag: 'wx' });
  }
  parentPort?.postMessage(null);
});
