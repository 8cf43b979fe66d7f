/**
 * Whether one of many texts may stand in another, at the cost of one look at each of its characters: of each text four
 * characters that are rare together are looked for, and the rest only round a place where they stand.
 */

/** Whether a text holds one of those that the filter is of, whatever white space it has where they have a space. */
export type TextFilter = (text: string) => boolean;

/** What else stands for a character, by it. */
type Alike = Readonly<Record<string, string>>;

/** A text, and where its four characters end in it. */
interface Anchored {
  readonly text: string;
  readonly end: number;
}

const LENGTH = 4;
const HASHES = 1 << 16;

/**
 * @param texts with single spaces
 * @returns the filter, and the texts that have no four characters without a space between, of which it knows nothing
 */
export function textFilter(texts: ReadonlySet<string>, alike: Alike): { readonly filter: TextFilter; readonly short: ReadonlySet<string> } {
  const anchored = [...texts].map((text) => ({ text, end: anchorOf(text, alike) }));
  const byHash = Map.groupBy(anchored.filter(({ end }) => end !== null) as Anchored[], hashOfAnchor);
  const isHash = new Uint8Array(HASHES);
  for (const hash of byHash.keys()) isHash[hash] = 1;
  const isOne = (read: string, end: number, hash: number): boolean =>
    byHash.get(hash)?.some((one) => standsRound(read, end, one, alike)) ?? false;
  const filter: TextFilter = (read) => {
    let four = 0;
    for (let n = 0; n < read.length; n += 1) {
      four = withNext(four, read.charCodeAt(n));
      const hash = hashOf(four);
      if (isHash[hash] === 1 && isOne(read, n + 1, hash)) return true;
    }
    return false;
  };
  return { filter, short: new Set(anchored.flatMap(({ text, end }) => (end === null ? [text] : []))) };
}

/** The last four characters as a number, after one more. */
const withNext = (four: number, code: number): number => (four << 8) | (code & 0xff);

/** Spread evenly (multiplicative hashing by the golden ratio: Knuth, The Art of Computer Programming, volume 3, 6.4). */
const hashOf = (four: number): number => Math.imul(four, 0x9e3779b1) >>> 16;

function hashOfAnchor({ text, end }: Anchored): number {
  let four = 0;
  for (let n = end - LENGTH; n < end; n += 1) four = withNext(four, text.charCodeAt(n));
  return hashOf(four);
}

/** Where the rarest four characters end that have no space among them and stand as themselves alone; null where there are none. */
function anchorOf(text: string, alike: Alike): number | null {
  let best: number | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (let end = LENGTH; end <= text.length; end += 1) {
    const four = text.slice(end - LENGTH, end);
    const often = [...four].reduce((sum, one) => sum + oftenOf(one), 0);
    if (often < least && ![...four].some((one) => one === ' ' || one in alike)) [best, least] = [end, often];
  }
  return best;
}

/** The letters of English prose, the rarest first. It says how quick the filter is, never what it finds. */
const OFTEN = 'zqxjkvbpygfwmucldrhsniaote';

/** Capitals begin few words; figures and marks stand on every page. */
function oftenOf(character: string): number {
  if (/\p{Lu}/u.test(character)) return OFTEN.length / 3;
  const place = OFTEN.indexOf(character);
  return place < 0 ? OFTEN.length : place;
}

/** Whether the text stands where its four characters end at a place. */
function standsRound(read: string, at: number, { text, end }: Anchored, alike: Alike): boolean {
  return goesOn(read, at, text, end, 1, alike) && goesOn(read, at - 1, text, end - 1, -1, alike);
}

/** Whether what is read goes on as the text does, forwards or backwards, from a place in each. */
function goesOn(read: string, place: number, text: string, from: number, step: 1 | -1, alike: Alike): boolean {
  let at = place;
  for (let n = from; n >= 0 && n < text.length; n += step) {
    const wanted = text.charAt(n);
    if (wanted !== ' ') {
      const there = read.charAt(at);
      if (there !== wanted && (there === '' || there !== alike[wanted])) return false;
      at += step;
    } else {
      if (!IS_SPACE.test(read.charAt(at))) return false;
      while (IS_SPACE.test(read.charAt(at))) at += step;
    }
  }
  return true;
}

const IS_SPACE = /\s/u;
