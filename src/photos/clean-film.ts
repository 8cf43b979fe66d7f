/**
 * Blanks what a camera wrote about itself and its place into a film of the MP4 family (ISO/IEC 14496-12; MOV is its
 * elder): user data, metadata and boxes of private types become free space of the same length, so that no picture
 * of the film moves within the file. A track of data that runs beside the film stays: it cannot be told from sound.
 */
import { closeSync, fstatSync, openSync, readSync, writeSync } from 'node:fs';
import { type Box, boxesBetween } from './boxes.ts';

/** Boxes that tell of the camera: user data, where telephones put the place; metadata; private types, as XMP has one. */
const TELLING = new Set(['udta', 'meta', 'uuid']);
/** Boxes in which those may lie. */
const HOLDING = new Set(['moov', 'trak', 'mdia', 'moof', 'traf']);
const FAMILY = new Set(['ftyp', 'moov', 'mdat', 'free', 'skip', 'wide', 'pnot']);

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

function boxesOf(open: number, from: number, to: number): Box[] {
  const bytes = Buffer.alloc(16);
  return boxesBetween((at, length) => bytes.subarray(0, readSync(open, bytes, 0, length, at)), from, to);
}
