/**
 * Blanks what a camera wrote about itself and its place into a film of the MP4 family (ISO/IEC 14496-12; MOV is its
 * elder): user data, metadata and boxes of private types become free space of the same length, so that no picture
 * of the film moves within the file. A track of data that runs beside the film stays: it cannot be told from sound.
 */
import { closeSync, fstatSync, openSync, readSync, writeSync } from 'node:fs';

/** Boxes that tell of the camera: user data, where telephones put the place; metadata; private types, as XMP has one. */
const TELLING = new Set(['udta', 'meta', 'uuid']);
/** Boxes in which those may lie. */
const HOLDING = new Set(['moov', 'trak', 'mdia', 'moof', 'traf']);
const FAMILY = new Set(['ftyp', 'moov', 'mdat', 'free', 'skip', 'wide', 'pnot']);

interface Box {
  readonly name: string;
  readonly at: number;
  readonly head: number;
  readonly length: number;
}

/**
 * Changes a file in place; one of another family is left as it is.
 *
 * @param file a copy, never the restorer's own
 * @returns how many boxes were blanked
 */
export function cleanFilm(file: string): number {
  const open = openSync(file, 'r+');
  try {
    const { size } = fstatSync(open);
    const [first] = boxesOf(open, 0, size);
    return first && FAMILY.has(first.name) ? cleanBoxes(open, 0, size) : 0;
  } finally {
    closeSync(open);
  }
}

function cleanBoxes(open: number, from: number, to: number): number {
  let blanked = 0;
  for (const box of boxesOf(open, from, to)) {
    if (HOLDING.has(box.name)) blanked += cleanBoxes(open, box.at + box.head, box.at + box.length);
    if (!TELLING.has(box.name)) continue;
    blank(open, box);
    blanked += 1;
  }
  return blanked;
}

function blank(open: number, { at, head, length }: Box): void {
  writeSync(open, 'free', at + 4, 'latin1');
  const zeros = Buffer.alloc(Math.min(length - head, 1 << 20));
  for (let done = 0; done < length - head; done += zeros.length) {
    writeSync(open, zeros, 0, Math.min(zeros.length, length - head - done), at + head + done);
  }
}

/** Boxes lie end to end; a length of 1 has its own eight bytes after the name, and one of 0 goes to the end. */
function boxesOf(open: number, from: number, to: number): Box[] {
  const boxes: Box[] = [];
  const bytes = Buffer.alloc(16);
  for (let at = from; at + 8 <= to; ) {
    readSync(open, bytes, 0, Math.min(16, to - at), at);
    const short = bytes.readUInt32BE(0);
    const head = short === 1 ? 16 : 8;
    const length = short === 1 ? Number(bytes.readBigUInt64BE(8)) : short === 0 ? to - at : short;
    if (length < head || at + length > to) break;
    boxes.push({ name: bytes.toString('latin1', 4, 8), at, head, length });
    at += length;
  }
  return boxes;
}
