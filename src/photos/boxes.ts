/** The boxes that films, HEIC and AVIF are made of (ISO/IEC 14496-12, 4.2). */

export interface Box {
  /** Its type, four letters. */
  readonly name: string;
  /** Where it begins, its head included. */
  readonly at: number;
  /** How many bytes its head has. */
  readonly head: number;
  /** Of the whole of it. */
  readonly length: number;
}

/**
 * The boxes between two offsets. They lie end to end: four bytes of length and four of name; a length of 1 has
 * its own eight bytes after the name, and one of 0 goes to the end. What follows one that runs over is left out.
 *
 * @param bytesAt up to 16 bytes from an offset
 */
export function boxesBetween(bytesAt: (at: number, length: number) => Buffer, from: number, to: number): Box[] {
  const boxes: Box[] = [];
  for (let at = from; at + 8 <= to; ) {
    const bytes = bytesAt(at, Math.min(16, to - at));
    if (bytes.length < 8) break;
    const short = bytes.readUInt32BE(0);
    const long = short === 1 && bytes.length === 16;
    const head = long ? 16 : 8;
    const length = long ? Number(bytes.readBigUInt64BE(8)) : short === 0 ? to - at : short;
    if (length < head || at + length > to) break;
    boxes.push({ name: bytes.toString('latin1', 4, 8), at, head, length });
    at += length;
  }
  return boxes;
}
