import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { folded } from '../../src/journal/copy/withheld.ts';
import { codings, readAsPage, withoutEntities } from '../../src/site/proof/codings.ts';
import { fileFilter } from '../../src/site/proof/letters-filter.ts';
import { anyOf, mayHold, standing } from '../../src/site/proof/patterns.ts';

/** Every character of the planes that have letters, but for halves of pairs. */
const CHARACTERS = Array.from({ length: 0x30000 }, (_, n) => n)
  .filter((n) => n < 0xd800 || n > 0xdfff)
  .map((n) => String.fromCodePoint(n));

// Source: the Unicode character database as `String.prototype.normalize` has it (Unicode Standard Annex 15).
test('one sign alone becomes a letter of ASCII, and the signs up to U+00FF that are looked over hold none', () => {
  const becoming = CHARACTERS.filter((one) => one.normalize('NFC') !== one && /^[A-Za-z0-9]/.test(one.normalize('NFC')));
  expect(becoming).toEqual(['\u212a']);
  const holding = CHARACTERS.filter((one) => one > '\u007f' && one <= '\u00ff' && /[A-Za-z0-9]/.test(one.normalize('NFD')));
  expect(holding.filter((one) => /[\u0080-\u00bf\u00c6\u00d0\u00d7\u00d8\u00de\u00df\u00e6\u00f0\u00f7\u00f8\u00fe]/.test(one))).toEqual(
    [],
  );
});

test('only what folding can change is composed', () => {
  const changed = CHARACTERS.filter((one) => !/\s/u.test(one) && folded(one) !== one.normalize('NFC'));
  expect(changed).toEqual([]);
  expect(folded(' Ro\u0301s\u00a0\n of\u2002 \u212belund ')).toBe('R\u00f3s of \u00c5elund');
});

test.each([
  ['a text with white space of any kind', 'Ashby Lane', 'at Ashby\n \u00a0Lane it', true],
  ['one with accents that stand apart', 'Rosé', 'the Rose\u0301 one', true],
  ['a letter that becomes another', 'K 44', 'no. \u212a 44', true],
  ['none of them', 'Ashby Lane', 'at Ashby and Lane', false],
])('%s is not passed over', (_, text, there, stands) => {
  const sought = anyOf([{ text, what: 'private' }]);
  expect(mayHold(there, sought)).toBe(stands);
  expect([...standing(folded(there), sought)].length > 0).toBe(stands);
});

const letters = (some: string, min: number, max: number) =>
  fc.array(fc.constantFrom(...some), { minLength: min, maxLength: max }).map((all) => all.join(''));

/** Whether a text stands there, and not as a part of a longer word. */
function standsAlone(whole: string, text: string): boolean {
  const isWord = (one: string | undefined) => /[\p{L}\p{N}\p{M}]/u.test(one ?? '');
  return [...Array(whole.length).keys()].some(
    (at) => whole.startsWith(text, at) && !isWord(whole[at - 1]) && !(isWord(text.at(-1)) && isWord(whole[at + text.length])),
  );
}

/** What is looked for at first: from the first letter to the last of the longest stretch without what may be coded otherwise. */
function coreOf(text: string): string {
  const stretch = text.split('K').reduce((longest, one) => (one.length > longest.length ? one : longest));
  return /[a-zA-Z0-9].*[a-zA-Z0-9]/su.exec(stretch)?.[0] ?? text;
}

const AMONG_MANY = Array.from({ length: 40 }, (_, n) => `Nobody says this number ${n}`);
const soughtWith = (texts: readonly string[]) => anyOf([...AMONG_MANY, ...texts].map((text) => ({ text, what: 'private' })));

test.each([1, 12])('nothing that stands in a text is passed over, and little that does not is looked at again, of %i texts', (most) => {
  const words = letters('abK;1,', 1, 6);
  const withheld = fc.array(
    fc.array(words, { minLength: 1, maxLength: 3 }).map((all) => all.join(' ')),
    { minLength: 1, maxLength: most },
  );
  // Of the same few characters, with what else becomes them and what else is white space.
  const around = letters('abK;1, \n\u00a0\u212a\u037e', 0, 30);
  const written = (text: string) => text.replaceAll(' ', '\n\u00a0').replaceAll('K', '\u212a').replaceAll(';', '\u037e');
  fc.assert(
    fc.property(withheld, around, around, fc.nat(), (texts, before, after, nth) => {
      const there = `${before}${nth % 2 === 0 ? written(texts[nth % texts.length] ?? '') : ''}${after}`;
      const whole = folded(there);
      const stands = texts.some((text) => standsAlone(whole, text));
      for (const sought of [anyOf(texts.map((text) => ({ text, what: 'private' }))), soughtWith(texts)]) {
        if (stands) expect(mayHold(there, sought)).toBe(true);
        if (!texts.some((text) => whole.includes(coreOf(text)))) expect(mayHold(there, sought)).toBe(false);
      }
    }),
    { numRuns: 250, seed: 77 },
  );
});

/** Pieces of a file of text in every coding, and such as are hard to tell from them. */
const PIECE = fc.constantFrom(
  ...['a', 'b', 'C', '1', ' ', '\n', 'ab', 'lot 1', 'C 4417', 'd\u00e9j\u00e0', 'e\u0301', 'e', '\u212a', 'K', '\u2013', '\u2122'],
  ...['<b>', '</b>', '<a title="ab', 'C">', '<', '>', '""', '"', '\\"', '\\n', '\\u0061', '%61', '%', '%C3%A9', '20%'],
  ...[
    '&amp;',
    '&lt;',
    '&gt;',
    '&#97;',
    '&#x61;',
    '&#39;',
    '&#233;',
    '&#769;',
    '&copy;',
    '&',
    '&#',
    '&#0000000000000097;',
    '&abcdefghijklm;',
  ],
);

test('nothing that stands in a coding of a file is passed over', () => {
  const file = fc.array(PIECE, { minLength: 1, maxLength: 14 }).map((all) => all.join(''));
  let passedOver = 0;
  fc.assert(
    fc.property(file, fc.nat(), fc.nat(), fc.nat(), fc.constantFrom(undefined, 'sum' as const), (there, nth, from, length, as) => {
      // What a reference is made of is no letter of the text.
      const readings = [...codings(there), readAsPage(there)].filter((one) => withoutEntities(one) === one).map(folded);
      const reading = readings[nth % readings.length] ?? '';
      const text = folded(
        [...reading]
          .slice(from % ([...reading].length + 1))
          .slice(0, 2 + (length % 9))
          .join(''),
      );
      fc.pre(text !== '');
      const withheld = [{ text, what: 'private', ...(as === undefined ? {} : { as }) }];
      const sought = anyOf(withheld);
      const stands = readings.some((one) => [...standing(one, sought)].length > 0);
      const looked = fileFilter(withheld).mayStandInText(new TextEncoder().encode(there));
      if (stands) expect({ text, there, looked }).toEqual({ text, there, looked: true });
      if (!looked) passedOver += 1;
    }),
    { numRuns: 4000, seed: 78 },
  );
  expect(passedOver).toBeGreaterThan(100);
});

test.each([
  ['over a bracket that opens no tag', 'one a < two', 'was <b>one</b> a < two'],
  ['behind a bracket that is coded in a tag', 'lot">one', '<a title="x &gt; lot">o</a>ne'],
  ['between brackets that are coded', 'secret', 'a se&lt;i&gt;cret'],
  ['with what no letter of ASCII is', 'Łódź, 5', '<i>Łódź</i>, 5'],
])('%s', (_, text, there) => {
  expect(codings(there)).toContainEqual(expect.stringContaining(text));
  expect(fileFilter([{ text, what: 'private' }]).mayStandInText(new TextEncoder().encode(there))).toBe(true);
});

test.each(['£1.20', 'Q7', 'Bo'])('nor is %s, which has few letters, however often a part of it stood elsewhere', (text) => {
  const { mayStandInText: filter } = fileFilter([{ text, what: 'private' }]);
  const bytesOf = (said: string) => new TextEncoder().encode(said);
  for (let n = 0; n < 100; n += 1) {
    expect(filter(bytesOf('<p>£3.20, £3.12, £12.50, £4.12 and 720 x7, xo, aB'))).toBe(false);
    expect(filter(bytesOf(`<p>that was <b>${text}</b> then`))).toBe(true);
  }
});

test('nothing that stands in bytes is passed over, in whatever encoding', () => {
  const piece = fc.constantFrom(
    'a',
    'b',
    'C',
    '1',
    ' ',
    'lot 1',
    'd\u00e9j\u00e0',
    'e\u0301',
    'e',
    'K',
    '\u212a',
    '\u2013',
    '\u0434',
    '\0',
  );
  const text = fc.array(piece, { minLength: 2, maxLength: 10 }).map((all) => all.join(''));
  const encodings = fc.constantFrom('latin1', 'utf8', 'utf16le', 'utf16be');
  let passedOver = 0;
  fc.assert(
    fc.property(text, text, text, encodings, fc.boolean(), (before, secret, behind, encoding, there) => {
      const withheld = folded(secret.replaceAll('\0', ''));
      fc.pre(withheld.length > 1);
      const said = `${before} ${there ? secret.replaceAll('\0', '') : ''} ${behind}`;
      const bytes = Buffer.from(said, encoding === 'utf16be' ? 'utf16le' : (encoding as BufferEncoding));
      const looked = fileFilter([{ text: withheld, what: 'private' }]).mayStandInBytes(encoding === 'utf16be' ? bytes.swap16() : bytes);
      const stands = folded(encoding === 'latin1' ? bytes.toString('latin1') : said).includes(withheld) && there;
      if (stands) expect({ said, withheld, encoding, looked }).toEqual({ said, withheld, encoding, looked: true });
      if (!looked) passedOver += 1;
    }),
    { numRuns: 2000, seed: 79 },
  );
  expect(passedOver).toBeGreaterThan(100);
});

test('a text whose rarest letters stand everywhere is found all the same', () => {
  const { mayStandInText: filter } = fileFilter([{ text: 'the quiz at Ley', what: 'private' }]);
  const bytesOf = (text: string) => new TextEncoder().encode(text);
  for (let n = 0; n < 400; n += 1) expect(filter(bytesOf('a quiz, the quiz, equiz at <b>quizat</b> Leyton'))).toBe(false);
  expect(filter(bytesOf('a quiz and <b>the</b>\n quiz at <i>Ley</i>'))).toBe(true);
});
