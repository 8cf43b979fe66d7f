/**
 * Whether one of many texts may stand in another, at the cost of one look at each of its characters: of each text a few letters
 * that are rare together are looked for, and the rest only round a place where they stand.
 */
import { folded, type Withheld } from '../../journal/copy/withheld.ts';
import { type Anchored, type Anchors, anchoredAt, anchorsOf } from './anchors.ts';
import { codings, readAsPage, withoutEntities } from './codings.ts';
import {
  holdsRuns,
  type Letters,
  noLetters,
  OF_ADDRESSES,
  OF_BYTES,
  OF_MARKUP,
  OF_SCRIPTS,
  type Reading,
  readFileLetters,
  readLetters,
} from './letters.ts';

/** A text that is looked for. */
interface Sought extends Anchored {
  /** From its first letter to its last. */
  readonly core: string;
  /** What may not stand before it and behind it, as it goes on there as another word or number. */
  readonly before: RegExp | null;
  readonly behind: RegExp | null;
}

/** Texts that are looked for by their letters, and those that have but a letter. */
interface LookedFor {
  readonly anchors: Anchors<Sought>;
  readonly without: readonly Withheld[];
}

/** @returns false only where none of the texts stands in a text as it stands, and the texts of which it knows nothing */
export function textFilter(withheld: readonly Withheld[]): {
  readonly filter: (text: string) => boolean;
  readonly without: readonly Withheld[];
} {
  const { anchors, without } = lookedFor(withheld);
  const letters = noLetters();
  const filter = (text: string): boolean =>
    standsAmong(anchors, [readLetters(text, letters)], { at: (n) => text.charAt(n), between: (from, to) => [text.slice(from, to)] });
  return { filter, without };
}

/** False only where none of the texts stands in a file, in any coding that it may have there. */
export interface FileFilter {
  mayStandInText(bytes: Uint8Array): boolean;
  /** In a file that is no text, or not known to be. */
  mayStandInBytes(bytes: Uint8Array): boolean;
}

export function fileFilter(withheld: readonly Withheld[]): FileFilter {
  const { anchors, without } = lookedFor(withheld);
  const [all, outside] = [noLetters(), noLetters()];
  const standsAs = (bytes: Uint8Array, reading: Reading, text: Readings): boolean => {
    const found = holdsRuns(bytes, reading, anchors);
    if (found !== true) return found === null;
    readFileLetters(bytes, reading, all, outside);
    return standsAmong(anchors, all.count === outside.count ? [all] : [all, outside], text);
  };
  // What has a reference in itself is not found in letters without references.
  const inAnyText = without.length > 0 || withheld.some(({ text }) => withoutEntities(text) !== text);
  return {
    mayStandInText: (bytes) =>
      inAnyText ||
      CODED.some(
        (reading) => (reading.where === null || bytes.includes(reading.where)) && standsAs(bytes, reading, codedText(bytes, reading)),
      ),
    mayStandInBytes: (bytes) =>
      without.length > 0 ||
      standsAs(bytes, OF_BYTES, { at: (n) => String.fromCharCode(bytes[n] ?? 0), between: (from, to) => inEachEncoding(bytes, from, to) }),
  };
}

const CODED = [OF_MARKUP, OF_SCRIPTS, OF_ADDRESSES];

const codedText = (bytes: Uint8Array, { where }: Reading): Readings => ({
  // What stands beside a place is no letter of the text where it is of a mark that is passed over.
  at: (n) => (where === null ? String.fromCharCode(bytes[n] ?? 0) : ''),
  between: (from, to) => inEachCoding(new TextDecoder().decode(bytes.subarray(from, to))),
});

const inEachCoding = (text: string): readonly string[] => [...codings(text), readAsPage(text)];

/** As Latin letters, in UTF-8 and in UTF-16 of both orders, of which a letter has a byte more on either side. */
function inEachEncoding(bytes: Uint8Array, from: number, to: number): readonly string[] {
  const read = (encoding: string, first: number, past: number): string => new TextDecoder(encoding).decode(bytes.subarray(first, past));
  return [
    Buffer.from(bytes.subarray(from, to)).toString('latin1'),
    read('utf-8', from, to),
    read('utf-16le', from, to + 1),
    read('utf-16be', Math.max(0, from - 1), to),
  ];
}

/** A text whose letters were read. */
interface Readings {
  at(place: number): string;
  /** What may be meant by what stands between two places. */
  between(from: number, to: number): readonly string[];
}

function standsAmong(anchors: Anchors<Sought>, read: readonly Letters[], text: Readings): boolean {
  const stands = read.some((letters) =>
    anchors.some(letters, (one, at) => {
      const first = at - one.end;
      return goesOn(one, first, letters) ? standsAt(one, first, letters, text) : anchors.miss(one);
    }),
  );
  anchors.settle();
  return stands;
}

/** Whether all its letters stand among those of the text. */
function goesOn({ codes }: Sought, first: number, letters: Letters): boolean {
  if (first < 0 || first + codes.length > letters.count) return false;
  for (let n = 0; n < codes.length; n += 1) if (letters.codes[first + n] !== codes[n]) return false;
  return true;
}

function standsAt({ core, codes, before, behind }: Sought, first: number, letters: Letters, text: Readings): boolean {
  const [from, to] = [letters.places[first] as number, (letters.places[first + codes.length - 1] as number) + 1];
  if (before?.test(text.at(from - 1)) || behind?.test(text.at(to))) return false;
  return text.between(from, to).some((one) => folded(one) === core);
}

function lookedFor(withheld: readonly Withheld[]): LookedFor {
  const all = withheld.map((one) => ({ one, sought: soughtOf(one) }));
  const anchors = anchorsOf(all.flatMap(({ sought }) => sought ?? []));
  return { anchors, without: all.flatMap(({ one, sought }) => (sought === null ? [one] : [])) };
}

const GOES_ON = /[A-Za-z0-9]/;
const FIGURE = /\d/;

function soughtOf({ text, as }: Withheld): Sought | null {
  const stretch = plainStretch(text);
  const letters = readLetters(stretch, noLetters());
  const codes = letters.codes.slice(0, letters.count);
  const anchored = anchoredAt(codes);
  if (anchored === null) return null;
  const [from, to] = [letters.places[0] as number, (letters.places[codes.length - 1] as number) + 1];
  return {
    ...anchored,
    core: folded(stretch.slice(from, to)),
    before: from === 0 && text.startsWith(stretch) ? GOES_ON : null,
    behind: to < stretch.length || !text.endsWith(stretch) ? null : as === 'sum' ? FIGURE : GOES_ON,
  };
}

/** What may be coded with letters of ASCII in it: accents and their letters, the sign that becomes a K, and in UTF-16 most others. */
const NOT_PLAIN = /[^\0-\u00bf\u00c6\u00d0\u00d7\u00d8\u00de\u00df\u00e6\u00f0\u00f7\u00f8\u00fe]|K/u;

/** The longest stretch of a text in which each letter of ASCII stands as itself however it is coded, and no other does. */
function plainStretch(text: string): string {
  return text.split(NOT_PLAIN).reduce((longest, one) => (one.length > longest.length ? one : longest), '');
}
