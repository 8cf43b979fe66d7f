/** The thread of a file writer: batches in, for each what is to be kept of it back when it is written. Its first error ends it. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { parentPort, workerData } from 'node:worker_threads';
import { zstdCompressSync, zstdDecompressSync } from 'node:zlib';
import { fillDay } from './day-mark.ts';
import type { NewFile } from './file-writer.ts';
import { cutPage, leafName, MOST_BYTES } from './long-pages/cut-page.ts';

const folders = new Set<string>();
const day = new TextEncoder().encode(workerData as string);

parentPort?.on('message', (batch: readonly NewFile[]) => {
  const kept: Uint8Array[] = [];
  for (const [path, bytes, form] of batch) {
    const folder = dirname(path);
    if (!folders.has(folder)) mkdirSync(folder, { recursive: true });
    folders.add(folder);
    const leaves = form === 'kept' ? apart(zstdDecompressSync(bytes)) : leavesOf(path, bytes);
    if (form === 'to-keep') kept.push(new Uint8Array(zstdCompressSync(together(leaves))));
    for (const [n, leaf] of leaves.entries()) writeFileSync(leafName(path, n), fillDay(leaf, day), { flag: 'wx' });
  }
  parentPort?.postMessage(kept);
});

/** A page that is too long is several files; the record's day is longer than what stands for it. */
function leavesOf(path: string, bytes: Uint8Array): readonly Uint8Array[] {
  if (bytes.length <= MOST_BYTES - ROOM_FOR_DAYS || !path.endsWith('.html')) return [bytes];
  const encoder = new TextEncoder();
  return cutPage(path, new TextDecoder().decode(bytes)).map(([, html]) => encoder.encode(html));
}

const ROOM_FOR_DAYS = 500;
/** It stands in no page. */
const BETWEEN_LEAVES = Uint8Array.of(0);

const together = (leaves: readonly Uint8Array[]): Uint8Array =>
  leaves.length === 1 ? (leaves[0] as Uint8Array) : Buffer.concat(leaves.flatMap((leaf, n) => (n === 0 ? [leaf] : [BETWEEN_LEAVES, leaf])));

function apart(bytes: Buffer): readonly Uint8Array[] {
  const leaves: Uint8Array[] = [];
  let from = 0;
  for (let to = bytes.indexOf(0); to !== -1; to = bytes.indexOf(0, from)) {
    leaves.push(bytes.subarray(from, to));
    from = to + 1;
  }
  return [...leaves, bytes.subarray(from)];
}
