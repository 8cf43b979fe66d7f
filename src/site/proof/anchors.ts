/** Of each of many texts the few letters by which it is looked for. */
import { HASHES, hashOf, type Letters, type Runs, THREE, TWO, withNext } from './letters.ts';

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

/** So many letters are looked for; of texts that have fewer, all that they have, which are so many at least. */
const [LENGTH, LEAST] = [4, 2];

/** @returns null for what has fewer letters than can be looked for */
export function anchoredAt(codes: Uint8Array): Anchored | null {
  if (codes.length < LEAST) return null;
  const oftenAt = (end: number): number =>
    codes.subarray(Math.max(0, end - LENGTH), end).reduce((sum, code) => sum + oftenOf(String.fromCharCode(code)), 0);
  const ends = Array.from({ length: Math.max(1, codes.length - LENGTH + 1) }, (_, n) => Math.min(codes.length, n + LENGTH));
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
  const [long, short] = [all.filter(({ codes }) => codes.length >= LENGTH), all.filter(({ codes }) => codes.length < LENGTH)];
  const fours = new Map<number, One[]>();
  const isFour = new Uint8Array(HASHES);
  const place = (): void => {
    fours.clear();
    isFour.fill(0);
    for (const one of long) {
      const four = runOf(one);
      fours.set(four, [...(fours.get(four) ?? []), one]);
      isFour[hashOf(four)] = 1;
    }
  };
  place();
  const shorts = Map.groupBy(short, runOf);
  const isTwo = new Uint8Array(HASHES);
  for (const run of shorts.keys()) isTwo[run & TWO] = 1;
  const missed = new Set<One>();
  return {
    fours,
    isFour,
    shorts,
    isTwo,
    some: ({ codes, count }, stands) => {
      let four = 0;
      for (let n = 0; n < count; n += 1) {
        four = withNext(four, codes[n] as number);
        if (isFour[hashOf(four)] === 1 && fours.get(four)?.some((one) => stands(one, n + 1))) return true;
        if (isTwo[four & TWO] !== 1) continue;
        if ([four & TWO, four & THREE].some((run) => shorts.get(run)?.some((one) => stands(one, n + 1)))) return true;
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

/** The letters by which a text is looked for, as a number. */
const runOf = ({ codes, end }: Anchored): number => codes.subarray(Math.max(0, end - LENGTH), end).reduce(withNext, 0);
