/**
 * Where the samples of a track of a film lie in its file, by the tables of the track: how long each sample is, how many
 * are in a chunk, and where each chunk begins (ISO/IEC 14496-12, 8.7.2 to 8.7.5).
 */
import type { Box } from './boxes.ts';

/** A stretch of a file: from, and how many bytes. */
export type Stretch = readonly [from: number, length: number];

/** A table that is read whole; a longer one would be of days of film. */
const LARGEST_TABLE = 16 * 1024 * 1024;
const MOST_SAMPLES = 4_000_000;

/**
 * @param tables the boxes in `stbl`
 * @param bodyOf what a box holds
 * @returns each chunk as one stretch, in the order of the file's table; null where the tables do not tell, or contradict each other
 */
export function samplesOf(tables: readonly Box[], bodyOf: (box: Box) => Buffer): readonly Stretch[] | null {
  // What is kept of a sample beside it lies anywhere (8.7.8, 8.7.9).
  if (tables.some(({ name, length }) => name === 'saio' || name === 'saiz' || length > LARGEST_TABLE)) return null;
  const body = (...names: readonly string[]): Buffer | null => {
    const box = tables.find(({ name }) => names.includes(name));
    return box ? bodyOf(box) : null;
  };
  const starts = chunkStarts(body('stco'), body('co64'));
  const sizes = sampleSizes(body('stsz'), body('stz2'));
  const perChunk = starts && samplesPerChunk(body('stsc'), starts.length);
  if (starts === null || sizes === null || perChunk === null) return null;
  const chunks: Stretch[] = [];
  let sample = 0;
  for (const [n, from] of starts.entries()) {
    let length = 0;
    for (const end = sample + (perChunk[n] ?? 0); sample < end; sample += 1) {
      const size = sizes.of(sample);
      if (size === null) return null;
      length += size;
    }
    chunks.push([from, length]);
  }
  return sample === sizes.count ? chunks : null;
}

function chunkStarts(short: Buffer | null, long: Buffer | null): number[] | null {
  const body = short ?? long;
  if (body === null || (short !== null && long !== null) || body.length < 8) return null;
  const width = short === null ? 8 : 4;
  const count = body.readUInt32BE(4);
  if (body.length < 8 + count * width) return null;
  return Array.from({ length: count }, (_, n) => (width === 4 ? body.readUInt32BE(8 + n * 4) : Number(body.readBigUInt64BE(8 + n * 8))));
}

interface Sizes {
  readonly count: number;
  /** Null beyond the last. */
  of(sample: number): number | null;
}

function sampleSizes(full: Buffer | null, compact: Buffer | null): Sizes | null {
  const body = full ?? compact;
  if (body === null || body.length < 12) return null;
  const count = body.readUInt32BE(8);
  if (count > MOST_SAMPLES) return null;
  const within = (size: number) => (sample: number) => (sample < count ? size : null);
  const all = full === null ? 0 : body.readUInt32BE(4);
  if (all > 0) return { count, of: within(all) };
  const bits = full === null ? (body[7] ?? 0) : 32;
  if (![4, 8, 16, 32].includes(bits) || body.length < 12 + Math.ceil((count * bits) / 8)) return null;
  return { count, of: (sample) => (sample < count ? numberAt(body, 12 + Math.floor((sample * bits) / 8), bits, sample) : null) };
}

/** Two of four bits share a byte, the first in its upper half (8.7.3.3). */
function numberAt(body: Buffer, at: number, bits: number, sample: number): number {
  if (bits !== 4) return body.readUIntBE(at, bits / 8);
  const byte = body[at] ?? 0;
  return sample % 2 === 0 ? byte >> 4 : byte & 15;
}

/** Runs of chunks with as many samples each, by the number of their first one, from 1 (8.7.4). */
function samplesPerChunk(body: Buffer | null, chunks: number): number[] | null {
  if (body === null || body.length < 8) return null;
  const count = body.readUInt32BE(4);
  if (body.length < 8 + count * 12) return null;
  const perChunk: number[] = [];
  for (let n = 0; n < count; n += 1) {
    const first = body.readUInt32BE(8 + n * 12);
    const next = n + 1 < count ? body.readUInt32BE(8 + (n + 1) * 12) : chunks + 1;
    // Runs behind the last chunk say nothing; each begins where the one before it ends.
    if (first !== perChunk.length + 1 || next < first) return first > chunks && perChunk.length === chunks ? perChunk : null;
    const samples = body.readUInt32BE(12 + n * 12);
    for (let chunk = first; chunk < Math.min(next, chunks + 1); chunk += 1) perChunk.push(samples);
  }
  return perChunk.length === chunks ? perChunk : null;
}
