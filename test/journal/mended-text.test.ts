import fc from 'fast-check';
import { expect, test } from 'vitest';
import { MendedText } from '../../src/journal/read/mending/mended-text.ts';

const edit = fc.record({ start: fc.nat(40), length: fc.nat(6), text: fc.string({ maxLength: 5 }).map((text) => text.toUpperCase()) });

test('whatever is mended, and however often, every character that is left leads back to where it was written', () => {
  // Each character of what was written is another one, so that it can be found again.
  const written = Array.from({ length: 40 }, (_, n) => String.fromCodePoint(0x4e00 + n)).join('');
  fc.assert(
    fc.property(fc.array(edit, { maxLength: 6 }), (edits) => {
      let mended = new MendedText(written);
      for (const { start, length, text } of edits) {
        const from = Math.min(start, mended.text.length);
        mended = mended.with([{ start: from, end: Math.min(from + length, mended.text.length), text }]);
      }
      for (const [at, letter] of [...mended.text].entries()) {
        if (written.includes(letter)) expect(written[mended.origin(at)]).toBe(letter);
      }
      const origins = [...mended.text].map((_, at) => mended.origin(at));
      expect(origins).toEqual([...origins].sort((a, b) => a - b));
      expect(mended.origin(mended.text.length)).toBeLessThanOrEqual(written.length);
    }),
    { numRuns: 2000 },
  );
});

test('several edits are made at once, by where they stand before any of them', () => {
  const mended = new MendedText('a: b: c').with([
    { start: 3, end: 3, text: '"' },
    { start: 7, end: 7, text: '"' },
  ]);
  expect(mended.text).toBe('a: "b: c"');
  expect([3, 4, 8, 9].map((at) => mended.origin(at))).toEqual([3, 3, 7, 7]);
});
