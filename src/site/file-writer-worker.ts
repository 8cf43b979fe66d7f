/** The thread of a file writer: batches in, for each what is to be kept of it back when it is written. Its first error ends it. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { parentPort, workerData } from 'node:worker_threads';
import { zstdCompressSync, zstdDecompressSync } from 'node:zlib';
import { fillDay } from './day-mark.ts';
import type { NewFile } from './file-writer.ts';
import { cutPage, MOST_BYTES } from './long-pages/cut-page.ts';

const folders = new Set<string>();
const day = new TextEncoder().encode(workerData as string);

parentPort?.on('message', (batch: readonly NewFile[]) => {
  const kept: Uint8Array[] = [];
  for (const [path, bytes, form] of batch) {
    const folder = dirname(path);
    if (!folders.has(folder)) mkdirSync(folder, { recursive: true });
    folders.add(folder);
    if (form === 'to-keep') kept.push(new Uint8Array(zstdCompressSync(bytes)));
    const page = fillDay(form === 'kept' ? zstdDecompressSync(bytes) : bytes, day);
    for (const [file, content] of filesOf(path, page)) writeFileSync(file, content, { flag: 'wx' });
  }
  parentPort?.postMessage(kept);
});

/** A page that is too long is several files. */
function filesOf(path: string, bytes: Uint8Array): readonly (readonly [path: string, content: Uint8Array | string])[] {
  return bytes.length > MOST_BYTES && path.endsWith('.html') ? cutPage(path, new TextDecoder().decode(bytes)) : [[path, bytes]];
}
