/** The thread of a file writer: batches in, a word back for each when it is written. Its first error ends it. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { parentPort } from 'node:worker_threads';
import type { NewFile } from './file-writer.ts';
import { cutPage, MOST_BYTES } from './long-pages/cut-page.ts';

const folders = new Set<string>();

parentPort?.on('message', (batch: readonly NewFile[]) => {
  for (const [path, bytes] of batch) {
    const folder = dirname(path);
    if (!folders.has(folder)) mkdirSync(folder, { recursive: true });
    folders.add(folder);
    for (const [file, content] of filesOf(path, bytes)) writeFileSync(file, content, { flag: 'wx' });
  }
  parentPort?.postMessage(null);
});

/** A page that is too long is several files. */
function filesOf(path: string, bytes: Uint8Array): readonly (readonly [path: string, content: Uint8Array | string])[] {
  return bytes.length > MOST_BYTES && path.endsWith('.html') ? cutPage(path, new TextDecoder().decode(bytes)) : [[path, bytes]];
}
