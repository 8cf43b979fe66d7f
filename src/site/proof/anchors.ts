/** Of each of many texts the few letters by which it is looked for. */
import { HASHES, hashOf, type Letters, type Runs, TWO, withNext } from './letters.ts';

export interface Anchored {
  /** Its letters. */
  readonly codes: Uint8Array;
  /** Where letters end that it may be looked for by, the rarest first. */
  readonly ends: readonly number[];
  /** That by which it is. */
  end: number;
  /** How often those stood where it did not. */
  misses: number;
}

/** So many letters are looked for; of texts that have fewer so many. */
const [LENGTH, LEAST] = [4, 2];

/** @returns null for what has fewer letters than can be looked for */
export function anchoredAt(codes: Uint8Array): Anchored | null {
  if (codes.length < LEAST) return null;
  const length = codes.length < LENGTH ? LEAST : LENGTH;
  const oftenAt = (end: number): number =>
    codes.subarray(end - length, end).reduce((sum, code) => sum + oftenOf(String.fromCharCode(code)), 0);
  const ends = Array.from({ length: codes.length - length + 1 }, (_, n) => n + length);
  const often = new Map(ends.map((end) => [end, oftenAt(end)]));
  ends.sort((a, b) => (often.get(a) ?? 0) - (often.get(b) ?? 0));
  return { codes, ends, end: ends[0] as number, misses: 0 };
}

/** The letters of English prose, the rarest first. It says how quick the search is, never what it finds. */
const OFTEN = 'zqxjkvbpygfwmucldrhsniaote';

/** Capitals begin few words; figures stand on every page. */
function oftenOf(character: string): number {
  if (character >= 'A' && character <= 'Z') return OFTEN.length / 3;
  const place = OFTEN.indexOf(character);
  return place < 0 ? OFTEN.length : place;
}

export interface Anchors<One extends Anchored> extends Runs {
  /** Asks of each text whose anchor stands among the letters, with where it ends there. */
  some(letters: Letters, stands: (one: One, at: number) => boolean): boolean;
  /** The anchor of a text stood where the text does not. */
  miss(one: One): false;
  /** What is often missed is looked for by other letters from now on: to be called between two texts. */
  settle(): void;
}

/** After so many misses other letters are tried. */
const OFTEN_MISSED = 50;

export function anchorsOf<One extends Anchored>(all: readonly One[]): Anchors<One> {
  const long = all.filter(({ codes }) => codes.length >= LENGTH);
  const [fours, twos] = [new Map<number, One[]>(), new Map<number, One[]>()];
  const [isFour, isTwo] = [new Uint8Array(HASHES), new Uint8Array(HASHES)];
  const place = (): void => {
    fours.clear();
    isFour.fill(0);
    for (const one of long) {
      const four = runOf(one, LENGTH);
      fours.set(four, [...(fours.get(four) ?? []), one]);
      isFour[hashOf(four)] = 1;
    }
  };
  place();
  for (const one of all.filter(({ codes }) => codes.length < LENGTH)) {
    const two = runOf(one, LEAST);
    twos.set(two, [...(twos.get(two) ?? []), one]);
    isTwo[two] = 1;
  }
  const missed = new Set<One>();
  return {
    fours,
    isFour,
    twos,
    isTwo,
    some: ({ codes, count }, stands) => {
      let four = 0;
      for (let n = 0; n < count; n += 1) {
        four = withNext(four, codes[n] as number);
        if (isFour[hashOf(four)] === 1 && fours.get(four)?.some((one) => stands(one, n + 1))) return true;
        if (isTwo[four & TWO] === 1 && twos.get(four & TWO)?.some((one) => stands(one, n + 1))) return true;
      }
      return false;
    },
    miss: (one) => {
      one.misses += 1;
      if (one.misses % OFTEN_MISSED === 0) missed.add(one);
      return false;
    },
    settle: () => {
      if (missed.size === 0) return;
      for (const one of missed) one.end = one.ends[(one.ends.indexOf(one.end) + 1) % one.ends.length] as number;
      missed.clear();
      place();
    },
  };
}

const runOf = ({ codes, end }: Anchored, length: number): number => codes.slice(end - length, end).reduce(withNext, 0);
