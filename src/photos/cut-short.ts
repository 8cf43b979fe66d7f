/**
 * Whether a file ends before its own structure says it does. Only structure is read, never pixels, so that a
 * folder of thousands is checked in seconds; what only unpacking can find is found when rendering.
 */
import { readSync } from 'node:fs';
import type { FileHandle } from 'node:fs/promises';
import { boxesBetween } from './boxes.ts';
import type { FileKind } from './facts.ts';
import { tiffExtent } from './tiff-extent.ts';

type Check = (file: FileHandle, size: number) => Promise<boolean>;

/**
 * @param file open for reading
 * @param kind what its first bytes say it is
 * @param size in bytes
 * @returns true when bytes are missing at its end
 */
export async function isCutShort(file: FileHandle, kind: FileKind, size: number): Promise<boolean> {
  return CHECKS[kind](file, size);
}

const CHECKS: Readonly<Record<FileKind, Check>> = {
  jpeg: jpegIsCut,
  png: pngIsCut,
  webp: webpIsCut,
  avif: boxesAreCut,
  heic: boxesAreCut,
  tiff: tiffIsCut,
  pdf: pdfIsCut,
};

/** An end marker FF D9 must follow the scan. Cameras append films and previews, so it need not be last. */
async function jpegIsCut(file: FileHandle, size: number): Promise<boolean> {
  const last = await bytesAt(file, Math.max(0, size - 2), 2);
  if (last[0] === 0xff && last[1] === 0xd9) return false;
  const all = await bytesAt(file, 0, size);
  const scan = startOfScan(all);
  // Inside a scan every FF is followed by 00 or a restart marker, so FF D9 can only be the end.
  return scan === null || all.indexOf(Buffer.from([0xff, 0xd9]), scan) === -1;
}

/** Walks the segments of a JPEG up to its first scan (ITU-T T.81, B.1.1); null when it never comes. */
function startOfScan(all: Buffer): number | null {
  let at = 2;
  while (at + 4 <= all.length) {
    if (all[at] !== 0xff) return null;
    const marker = all[at + 1] ?? 0;
    if (marker === 0xda) return at;
    at += marker === 0xff ? 1 : 2 + all.readUInt16BE(at + 2);
  }
  return null;
}

/** The chunk IEND must be there; mostly it is the last twelve bytes. */
async function pngIsCut(file: FileHandle, size: number): Promise<boolean> {
  const tail = await bytesAt(file, Math.max(0, size - 12), 12);
  if (tail.includes('IEND')) return false;
  let at = 8;
  while (at + 8 <= size) {
    const head = await bytesAt(file, at, 8);
    at += 12 + head.readUInt32BE(0);
    if (head.toString('latin1', 4, 8) === 'IEND') return at > size;
  }
  return true;
}

/** RIFF writes the length of all that follows its first eight bytes. */
async function webpIsCut(file: FileHandle, size: number): Promise<boolean> {
  const head = await bytesAt(file, 0, 12);
  return head.length < 12 || head.readUInt32LE(4) + 8 > size;
}

/**
 * The index `meta` and the pixels `mdat` must be there and end inside the file, as must every other box of a
 * picture. Phones append bytes of their own after the last box: what follows the first that is none is left out.
 */
async function boxesAreCut(file: FileHandle, size: number): Promise<boolean> {
  const all = boxesBetween((at, length) => bytesNow(file, at, length), 0, size);
  const other = all.findIndex(({ name }) => !PICTURE_BOXES.has(name));
  const boxes = other < 0 ? all : all.slice(0, other);
  const last = boxes.at(-1);
  const next = await bytesAt(file, last ? last.at + last.length : 0, 16);
  const runsOver = other < 0 && next.length === 16 && PICTURE_BOXES.has(next.toString('latin1', 4, 8));
  return runsOver || !['meta', 'mdat'].every((name) => boxes.some((box) => box.name === name));
}

const PICTURE_BOXES = new Set(['ftyp', 'meta', 'mdat', 'moov', 'free', 'skip', 'wide', 'uuid', 'pdin', 'mpvd']);

/** Pixels and directory must end inside the file, in whatever order they lie. A directory without sense is left to the header's check. */
async function tiffIsCut(file: FileHandle, size: number): Promise<boolean> {
  return ((await tiffExtent(file, size)) ?? 0) > size;
}

/** `%%EOF` ends a PDF; programs look for it in the last bytes only, some of which may be junk. */
async function pdfIsCut(file: FileHandle, size: number): Promise<boolean> {
  const tail = await bytesAt(file, Math.max(0, size - 4096), Math.min(size, 4096));
  return !tail.includes('%%EOF');
}

function bytesNow(file: FileHandle, from: number, length: number): Buffer {
  const bytes = Buffer.alloc(length);
  return bytes.subarray(0, readSync(file.fd, bytes, 0, length, from));
}

async function bytesAt(file: FileHandle, from: number, length: number): Promise<Buffer> {
  const { buffer, bytesRead } = await file.read(Buffer.alloc(length), 0, length, from);
  return buffer.subarray(0, bytesRead);
}
