/** How far into its file a TIFF reaches, from its first directory (TIFF 6.0, sections 2, 8 and 15). */
import type { FileHandle } from 'node:fs/promises';

/** StripOffsets with StripByteCounts, TileOffsets with TileByteCounts. */
const OFFSETS = [273, 324] as const;
const COUNTS = [279, 325] as const;
const SHORT = 3;
const LONG = 4;
/** A directory of more values than this is nonsense: 200 megapixels in strips of one row are far fewer. */
const MOST_VALUES = 1 << 20;

interface Reader {
  /** Bytes of the file, fewer where it ends. */
  at(from: number, length: number): Promise<Buffer>;
  short(bytes: Buffer, at: number): number;
  long(bytes: Buffer, at: number): number;
}

/**
 * @param file open for reading, of a TIFF by its first bytes
 * @param size of the file in bytes
 * @returns the offset after the last byte of its pixels or directory; null when the directory makes no sense
 */
export async function tiffExtent(file: FileHandle, size: number): Promise<number | null> {
  const head = await read(file, 0, 8);
  if (head.length < 8) return 8;
  const reader = readerOf(file, head.toString('latin1', 0, 2) === 'II');
  const start = reader.long(head, 4);
  if (start + 2 > size) return start + 2;
  const entries = reader.short(await reader.at(start, 2), 0);
  const end = start + 2 + entries * 12 + 4;
  if (end > size) return end;
  const directory = await reader.at(start + 2, entries * 12);
  const values = async (tags: readonly number[]): Promise<number[] | null> => valuesOf(reader, directory, tags, size);
  const [offsets, counts] = [await values(OFFSETS), await values(COUNTS)];
  if (offsets === null || counts === null) return null;
  return offsets.reduce((most, offset, n) => Math.max(most, offset + (counts[n] ?? 0)), end);
}

/** The values of the first entry that has one of the tags: none when there is no such entry, null when they lie nowhere. */
async function valuesOf(reader: Reader, directory: Buffer, tags: readonly number[], size: number): Promise<number[] | null> {
  for (let at = 0; at + 12 <= directory.length; at += 12) {
    if (!tags.includes(reader.short(directory, at))) continue;
    const type = reader.short(directory, at + 2);
    const count = reader.long(directory, at + 4);
    const width = type === SHORT ? 2 : 4;
    if ((type !== SHORT && type !== LONG) || count > MOST_VALUES) return null;
    const inside = count * width <= 4;
    const from = inside ? 0 : reader.long(directory, at + 8);
    // What lists the strips may itself lie behind the end: then it ends behind the end, which is all that is asked.
    if (from + count * width > size) return [from + count * width];
    const bytes = inside ? directory.subarray(at + 8, at + 12) : await reader.at(from, count * width);
    return Array.from({ length: count }, (_, n) => (width === 2 ? reader.short(bytes, n * 2) : reader.long(bytes, n * 4)));
  }
  return [];
}

function readerOf(file: FileHandle, little: boolean): Reader {
  return {
    at: (from, length) => read(file, from, length),
    short: (bytes, at) => (little ? bytes.readUInt16LE(at) : bytes.readUInt16BE(at)),
    long: (bytes, at) => (little ? bytes.readUInt32LE(at) : bytes.readUInt32BE(at)),
  };
}

async function read(file: FileHandle, from: number, length: number): Promise<Buffer> {
  const { buffer, bytesRead } = await file.read(Buffer.alloc(length), 0, length, from);
  return buffer.subarray(0, bytesRead);
}
