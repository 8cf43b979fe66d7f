/** The letters and figures of ASCII in a text one after the other, whatever stands between them: marks of a coding, elements, white space. */
import { decodedAddress, withoutEntities } from './codings.ts';

/** Letters and figures, and where each stands. The rows are longer than what they hold. */
export interface Letters {
  count: number;
  codes: Uint8Array;
  places: Uint32Array;
}

export const noLetters = (): Letters => ({ count: 0, codes: new Uint8Array(0), places: new Uint32Array(0) });

/** Runs of letters that are looked for, by the number that `withNext` makes of them: four letters, and short texts whole. */
export interface Runs {
  readonly fours: ReadonlyMap<number, unknown>;
  /** By their hashes. */
  readonly isFour: Uint8Array;
  /** Three letters or two. */
  readonly shorts: ReadonlyMap<number, unknown>;
  /** By their last two. */
  readonly isTwo: Uint8Array;
}

export const HASHES = 1 << 16;
/** Of the last four letters the last two, and the last three. */
export const TWO = 0xffff;
export const THREE = 0xffffff;

/** The last four letters as a number, after one more. */
export const withNext = (four: number, code: number): number => (four << 8) | code;

/** Spread evenly (multiplicative hashing by the golden ratio: Knuth, The Art of Computer Programming, volume 3, 6.4). */
export const hashOf = (four: number): number => Math.imul(four, 0x9e3779b1) >>> 16;

/** What a byte is to a way of reading: a letter, what may change how letters are read, or anything else. */
const LETTER = 1;
const MARK = 2;
const [LESS, MORE, AMPERSAND, PERCENT, BACKSLASH] = [0x3c, 0x3e, 0x26, 0x25, 0x5c] as const;
const IS_LETTER = Uint8Array.from({ length: 0x100 }, (_, byte) => (/[A-Za-z0-9]/.test(String.fromCharCode(byte)) ? LETTER : 0));

/** A way of reading letters: as the codings of one kind have them. */
export interface Reading {
  readonly kinds: Uint8Array;
  /** Only files that hold this byte are read so. */
  readonly where: number | null;
  /** @returns where to read on behind a mark that is no bracket; `NOWHERE` where the letters round it may be read otherwise */
  past(bytes: Uint8Array, at: number, inTag: boolean): number;
}

/** No place in a file. */
const NOWHERE = -1;

const readingOf = (marks: readonly number[], where: number | null, past: Reading['past']): Reading => ({
  kinds: Uint8Array.from(IS_LETTER, (kind, byte) => (marks.includes(byte) ? MARK : kind)),
  where,
  past,
});

/** Every byte stands for itself. */
export const OF_BYTES = readingOf([], null, () => NOWHERE);
/** With elements, and without references to characters. */
export const OF_MARKUP = readingOf([LESS, MORE, AMPERSAND], null, pastReference);
/** Without what a script has for the ends of lines. */
export const OF_SCRIPTS = readingOf([BACKSLASH], BACKSLASH, pastEscape);
/** Without what an address has for other characters than letters. */
export const OF_ADDRESSES = readingOf([PERCENT], PERCENT, pastCoded);

/** @param into what it held is gone */
export function readLetters(text: string, into: Letters): Letters {
  makeRoom(into, text.length);
  for (let n = 0; n < text.length; n += 1) {
    const code = text.charCodeAt(n);
    if (IS_LETTER[code] === LETTER) add(into, code, n);
  }
  return into;
}

/**
 * Looks through the letters of a file as a way of reading has them: all with those of tags, and those outside tags alone.
 *
 * @returns whether any of the runs stands there; null where the letters of some coding may be others, as a letter or a bracket is coded
 */
export function holdsRuns(bytes: Uint8Array, { kinds, past: pastMark }: Reading, { fours, isFour, shorts, isTwo }: Runs): boolean | null {
  const { length } = bytes;
  const anyShort = shorts.size > 0;
  let [four, fourOutside, past] = [0, 0, 0];
  let [found, inTag] = [false, false];
  for (let n = 0; n < length; n += 1) {
    const byte = bytes[n] as number;
    const kind = kinds[byte];
    if (kind === LETTER) {
      if (n < past) continue;
      four = withNext(four, byte);
      if (
        (isFour[hashOf(four)] === 1 && fours.has(four)) ||
        (anyShort && isTwo[four & TWO] === 1 && (shorts.has(four & TWO) || shorts.has(four & THREE)))
      )
        found = true;
      if (inTag) continue;
      fourOutside = withNext(fourOutside, byte);
      if (
        (isFour[hashOf(fourOutside)] === 1 && fours.has(fourOutside)) ||
        (anyShort && isTwo[fourOutside & TWO] === 1 && (shorts.has(fourOutside & TWO) || shorts.has(fourOutside & THREE)))
      )
        found = true;
    } else if (kind === MARK) {
      if (byte === LESS) inTag = true;
      else if (byte === MORE) inTag = false;
      else {
        past = pastMark(bytes, n, inTag);
        if (past === NOWHERE) return null;
      }
    }
  }
  // A bracket that is not closed opens no tag.
  return inTag ? null : found;
}

/** The letters that `holdsRuns` looks through, of a file in which no coding makes others of them. */
export function readFileLetters(bytes: Uint8Array, { kinds, past: pastMark }: Reading, all: Letters, outside: Letters): void {
  makeRoom(all, bytes.length);
  makeRoom(outside, bytes.length);
  let [past, inTag] = [0, false];
  for (let n = 0; n < bytes.length; n += 1) {
    const byte = bytes[n] as number;
    const kind = kinds[byte];
    if (kind === LETTER && n >= past) {
      add(all, byte, n);
      if (!inTag) add(outside, byte, n);
    } else if (kind === MARK) {
      if (byte === LESS || byte === MORE) inTag = byte === LESS;
      else past = pastMark(bytes, n, inTag);
    }
  }
}

function add(letters: Letters, code: number, place: number): void {
  letters.codes[letters.count] = code;
  letters.places[letters.count] = place;
  letters.count += 1;
}

/** Names that are known are shorter; so are all numbers of characters that do not begin in noughts. */
const LONGEST = 12;
const REFERENCE = /^&(?:#\d+|#x[0-9a-f]+|\w+);/i;

function pastReference(bytes: Uint8Array, at: number, inTag: boolean): number {
  const text = asciiFrom(bytes, at, LONGEST);
  const [reference] = REFERENCE.exec(text) ?? [''];
  if (reference === '') return text[1] === '#' ? NOWHERE : at + 1;
  const one = withoutEntities(reference);
  // What is not known stays as it stands.
  if (one === reference) return at + 1;
  return one === '<' || (inTag && one === '>') || hasLetter(one) ? NOWHERE : at + reference.length;
}

function pastEscape(bytes: Uint8Array, at: number): number {
  const text = asciiFrom(bytes, at, '\\u0000'.length);
  if (/^\\u[0-9a-f]{4}/i.test(text)) return NOWHERE;
  return /^\\[nrt]/.test(text) ? at + 2 : at + 1;
}

/** Longer rows of them are not read. */
const LONGEST_ROW = 60;

function pastCoded(bytes: Uint8Array, at: number): number {
  const [row] = /^(?:%[0-9a-f]{2})+/i.exec(asciiFrom(bytes, at, LONGEST_ROW)) ?? [''];
  if (row === '') return at + 1;
  const decoded = decodedAddress(row);
  return row.length === LONGEST_ROW || decoded === row || hasLetter(decoded) ? NOWHERE : at + row.length;
}

const asciiFrom = (bytes: Uint8Array, at: number, length: number): string => String.fromCharCode(...bytes.subarray(at, at + length));

/** With what its accents stand on, where they are coded with their letters. */
const hasLetter = (text: string): boolean => /[A-Za-z0-9]/.test(text.normalize('NFD'));

function makeRoom(letters: Letters, length: number): void {
  letters.count = 0;
  if (letters.codes.length >= length) return;
  letters.codes = new Uint8Array(length * 2);
  letters.places = new Uint32Array(length * 2);
}
