/** How large the packed objects of a PDF are when they are unpacked (ISO 32000-1, 7.5.7 and 7.5.8): a few bytes may stand for gigabytes. */
import { inflateSync } from 'node:zlib';

/** Nothing is unpacked beyond this. */
const MOST = 160 * 1024 * 1024;
/** Streams that a reader must unpack before it knows what is in a file: objects, and where they lie. */
const PACKED = ['/ObjStm', '/XRef'];

/** @returns bytes in all; more than any file may have when one goes beyond every bound */
export function unpackedOf(bytes: Uint8Array): number {
  const all = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let sum = 0;
  for (const kind of PACKED) {
    for (let at = all.indexOf(kind); at !== -1 && sum <= MOST; at = all.indexOf(kind, at + kind.length))
      sum += lengthOf(streamAfter(all, at), MOST - sum);
  }
  return sum;
}

/** The bytes of the stream whose dictionary an offset is in. */
function streamAfter(all: Buffer, from: number): Buffer {
  const word = all.indexOf('stream', from);
  if (word === -1) return Buffer.alloc(0);
  const start = word + 'stream'.length + (all[word + 6] === 0x0d ? 2 : 1);
  const end = all.indexOf('endstream', start);
  return all.subarray(start, end === -1 ? all.length : end);
}

function lengthOf(packed: Buffer, most: number): number {
  try {
    return inflateSync(packed, { maxOutputLength: Math.max(1, most), finishFlush: 2 }).length;
  } catch (error) {
    return (error as { code?: string }).code === 'ERR_BUFFER_TOO_LARGE' ? MOST + 1 : packed.length;
  }
}
