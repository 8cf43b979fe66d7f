/** When a film was taken, by its own header. */
import { closeSync, fstatSync, openSync, readSync } from 'node:fs';
import { type Box, boxesBetween } from './boxes.ts';
import type { TakenAt } from './facts.ts';

/** Seconds from 1904-01-01, which films count from (ISO/IEC 14496-12, 8.2.2), to 1970-01-01. */
const FROM_1904 = 2_082_844_800;

/**
 * The time in the movie header (`mvhd`), which is of UTC. A clock that was never set gives null, and so does a film of
 * another family, whose header is elsewhere.
 *
 * @throws the file system's error when the file cannot be read
 */
export function filmTakenAt(file: string): TakenAt | null {
  const open = openSync(file, 'r');
  try {
    const bytesAt = (at: number, length: number): Buffer => {
      const bytes = Buffer.alloc(length);
      return bytes.subarray(0, readSync(open, bytes, 0, length, at));
    };
    const within = ({ at, head, length }: Box) => boxesBetween(bytesAt, at + head, at + length);
    const movie = boxesBetween(bytesAt, 0, fstatSync(open).size).find(({ name }) => name === 'moov');
    const header = movie && within(movie).find(({ name }) => name === 'mvhd');
    return header ? takenIn(bytesAt(header.at + header.head, 12)) : null;
  } finally {
    closeSync(open);
  }
}

/** @param body version and flags, then the time in 4 bytes or, in version 1, in 8 */
function takenIn(body: Buffer): TakenAt | null {
  if (body.length < 12) return null;
  const seconds = (body[0] === 1 ? Number(body.readBigUInt64BE(4)) : body.readUInt32BE(4)) - FROM_1904;
  if (seconds <= 0 || seconds > 253_402_300_799) return null;
  return { local: new Date(seconds * 1000).toISOString().slice(0, 19), offset: '+00:00' };
}
