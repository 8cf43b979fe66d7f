/** How much a PDF holds when it is unpacked (ISO 32000-1, 7.3.8, 7.4.4, 7.5.7): a few bytes may stand for gigabytes. */
import { inflateSync } from 'node:zlib';
import { Unzlib } from 'fflate';
import { MOST_PIXELS } from './recipe.ts';

const MB = 1024 * 1024;
/** Objects, packed or not, in bytes: each takes the reader many times its own length. A tagged manual of 500 pages has some 5 MB. */
const MOST_OF_OBJECTS = 8 * MB;
/** Of anything else, a drawing or a fount: what draws a page takes twenty times as much. */
const MOST_OF_A_STREAM = 32 * MB;
const MOST_IN_ALL = 512 * MB;
/** A dictionary that is longer is not looked for from its beginning. */
const LONGEST_DICTIONARY = 4096;
/** How often a stream may be packed again. */
const MOST_FILTERS = 8;
const SLICE = 16 * 1024;

interface Stream {
  readonly dictionary: string;
  /** Offset of the first byte, and of the one behind the last. */
  readonly start: number;
  readonly end: number;
}

/**
 * Pictures count by the pixels that they declare, and attached files not at all: neither is unpacked further than it is shown.
 *
 * @returns whether it holds more than any paper does, so that reading or drawing it would fill the memory or never end
 */
export function isBeyondBounds(bytes: Uint8Array): boolean {
  const all = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  let [objects, sum] = [all.length, 0];
  for (const stream of streamsOf(all)) {
    objects -= stream.end - stream.start;
    if (isPicture(stream)) {
      if (pixelsOf(stream) > MOST_PIXELS) return true;
    } else if (!/\/EmbeddedFile\b/.test(stream.dictionary)) {
      const holds = unpackedLength(all, stream);
      sum += holds;
      if (/\/(?:ObjStm|XRef)\b/.test(stream.dictionary)) objects += holds;
      if (holds > MOST_OF_A_STREAM || sum > MOST_IN_ALL) return true;
    }
  }
  return objects > MOST_OF_OBJECTS;
}

function* streamsOf(all: Buffer): Generator<Stream> {
  let known = 0;
  for (let at = all.indexOf('stream'); at !== -1; at = all.indexOf('stream', known)) {
    const before = all.toString('latin1', Math.max(known, at - LONGEST_DICTIONARY), at).trimEnd();
    known = at + 'stream'.length;
    if (!before.endsWith('>>')) continue;
    const dictionary = before.slice(before.lastIndexOf(' obj') + 1);
    const start = known + (all[known] === 0x0d && all[known + 1] === 0x0a ? 2 : 1);
    const end = endOf(all, start, dictionary);
    yield { dictionary, start, end };
    known = end;
  }
}

/** Where its length says, if it ends there, else at the next word that ends one. */
function endOf(all: Buffer, start: number, dictionary: string): number {
  const declared = start + Number(/\/Length\s+(\d+)(?!\s+\d+\s+R)/.exec(dictionary)?.[1] ?? Number.NaN);
  if (/^\s*endstream/.test(all.toString('latin1', declared || start, (declared || start) + 16))) return declared || start;
  const end = all.indexOf('endstream', start);
  return end === -1 ? all.length : end;
}

const isPicture = ({ dictionary }: Stream): boolean => /\/Subtype\s*\/Image\b/.test(dictionary) && pixelsIn(dictionary) !== null;
const pixelsOf = ({ dictionary }: Stream): number => pixelsIn(dictionary) ?? 0;

function pixelsIn(dictionary: string): number | null {
  const [width, height] = ['Width', 'Height'].map((side) => new RegExp(`/${side}\\s+(\\d+)`).exec(dictionary)?.[1]);
  return width === undefined || height === undefined ? null : Number(width) * Number(height);
}

/** In bytes; where it goes beyond the bound, a little more than that. */
function unpackedLength(all: Buffer, { dictionary, start, end }: Stream): number {
  const filters = dictionary.match(/\/(?:FlateDecode|Fl)\b/g)?.length ?? 0;
  let packed = all.subarray(start);
  let length = end - start;
  for (let n = 0; n < Math.min(filters, MOST_FILTERS); n += 1) {
    const unpacked = inflated(packed);
    if (typeof unpacked === 'number') return Math.max(length, unpacked);
    packed = unpacked;
    length = Math.max(length, unpacked.length);
  }
  return length;
}

/** What comes behind the end of the packed bytes is passed over. @returns only how many bytes, of what is damaged or too many */
function inflated(packed: Buffer): Buffer | number {
  try {
    return inflateSync(packed, { maxOutputLength: MOST_OF_A_STREAM, finishFlush: 2 });
  } catch (error) {
    return (error as { code?: string }).code === 'ERR_BUFFER_TOO_LARGE' ? MOST_OF_A_STREAM + 1 : lengthBeforeDamage(packed);
  }
}

function lengthBeforeDamage(packed: Buffer): number {
  let length = 0;
  const reader = new Unzlib((piece) => {
    length += piece.length;
  });
  try {
    for (let at = 0; at < packed.length && length <= MOST_OF_A_STREAM; at += SLICE) reader.push(packed.subarray(at, at + SLICE));
  } catch {
    return length;
  }
  return length;
}
