import jsqr from 'jsqr';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { codeSvg, type Label, labelsOf, labelsTypst, PAPERS, PLAIN_SHEET, placesOn, sheetProblem } from '../../src/exports/labels.ts';
import { typeset } from '../../src/exports/typeset.ts';
import { compileFiles, JOURNAL, NOTE, note } from '../journal/base.ts';

// jsqr is an independent reader of QR codes (ISO/IEC 18004): none of its code is in the writer's.
const decode = (jsqr as unknown as { default?: typeof jsqr }).default ?? jsqr;

const LABEL: Label = {
  bag: 14,
  off: 'Wheel cylinder',
  holds: ['2 bolts 5/16 UNF', '2 spring washers'],
  goesBack: 'heads inboard',
  filled: '2031-03-12',
  link: 'https://example.org/van/bags.html#bag-14',
};

function record(address: string) {
  const journal = `${JOURNAL}${address}`;
  const fields = 'bags: [{ bag: 14, holds: [2 bolts], off: drum, goes-back: heads inboard }]';
  const compiled = compileFiles({ journal, more: { [NOTE]: note(fields) } });
  if (compiled.record === null) throw new Error('the journal does not compile');
  return compiled.record;
}

test('the printed code of a label is read by an independent reader', async () => {
  const { data, info } = await sharp(Buffer.from(codeSvg(LABEL.link ?? '')), { density: 400 })
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  expect(decode(new Uint8ClampedArray(data), info.width, info.height)?.data).toBe(LABEL.link);
});

test('a label carries number, place, contents and how it goes back', () => {
  const source = labelsTypst([LABEL], PLAIN_SHEET);
  for (const words of ['14', 'Off: Wheel cylinder', '2 bolts 5/16 UNF; 2 spring washers', 'Goes back: heads inboard', '2031-03-12']) {
    expect(source).toContain(words);
  }
});

test('a label has a code only where the journal has an address', () => {
  const with_ = labelsOf(record('address: https://example.org/van\n'), [14], (bag) => `bags.html#bag-${bag}`);
  expect(with_.map((label) => label.link)).toEqual(['https://example.org/van/bags.html#bag-14']);
  expect(labelsOf(record(''), [14, 15], (bag) => `${bag}`).map((label) => label.link)).toEqual([null]);
});

test.each(['a4', 'us-letter'] as const)('labels on %s stay on the paper and do not overlap', (paper) => {
  const places = placesOn({ ...PLAIN_SHEET, paper, columns: 3, rows: 7 }, 45);
  for (const [i, a] of places.entries()) {
    expect(a.x + a.width).toBeLessThanOrEqual(PAPERS[paper].width);
    expect(a.y + a.height).toBeLessThanOrEqual(PAPERS[paper].height);
    for (const b of places.slice(i + 1)) {
      const apart = a.sheet !== b.sheet || a.x + a.width <= b.x + 1e-9 || b.x + b.width <= a.x + 1e-9 || a.y + a.height <= b.y + 1e-9;
      expect(apart).toBe(true);
    }
  }
  expect(places.at(-1)?.sheet).toBe(2);
});

test('labels that were used on the first sheet are passed over', () => {
  const [first] = placesOn({ ...PLAIN_SHEET, skip: 3 }, 1);
  expect(first).toEqual(placesOn(PLAIN_SHEET, 4)[3]);
});

test('a sheet wider than its paper is refused', () => {
  expect(sheetProblem({ ...PLAIN_SHEET, columns: 4, width: 60 })).toMatch(/259.0 mm/);
  expect(sheetProblem(PLAIN_SHEET)).toBeNull();
});

test('what a note says is never taken as markup, and the sheet is a PDF', () => {
  const hostile: Label = { ...LABEL, holds: ['#panic("x")', '"quoted" \\ back', '*bold* $x$ <a>'] };
  expect(Buffer.from(typeset(labelsTypst([hostile], PLAIN_SHEET)).subarray(0, 5)).toString()).toBe('%PDF-');
});
