import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import { folded } from '../../src/journal/copy/withheld.ts';
import { AS_ITSELF, anyOf, mayHold, standing, TWICE } from '../../src/site/proof/patterns.ts';

/** Every character of the planes that have letters, but for halves of pairs. */
const CHARACTERS = Array.from({ length: 0x30000 }, (_, n) => n)
  .filter((n) => n < 0xd800 || n > 0xdfff)
  .map((n) => String.fromCodePoint(n));

// Source: the Unicode character database as `String.prototype.normalize` has it (Unicode Standard Annex 15).
test('what is looked for in a text as it stands stands there as itself, or as the one character that becomes it', () => {
  const itself = CHARACTERS.filter((one) => AS_ITSELF.test(one));
  expect(itself.length).toBeGreaterThan(150);
  expect(itself.filter((one) => one.normalize('NFD') !== one)).toEqual([]);
  const becoming = CHARACTERS.filter((one) => one.normalize('NFC') !== one && AS_ITSELF.test(one.normalize('NFC')));
  expect(new Set(becoming)).toEqual(new Set(Object.values(TWICE)));
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

/** The same pattern and the filter that takes its place where many are looked for. */
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
      for (const sought of [anyOf(texts.map((text) => ({ text, what: 'private' }))), soughtWith(texts)]) {
        if ([...standing(whole, sought)].length > 0) expect(mayHold(there, sought)).toBe(true);
        if (!texts.some((text) => whole.includes(text))) expect(mayHold(there, sought)).toBe(false);
      }
    }),
    { numRuns: 1500, seed: 77 },
  );
});
