import { PDFiumLibrary } from '@hyzyla/pdfium';
import jsqr from 'jsqr';
import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import {
  codeSvg,
  type Label,
  type LabelSheet,
  labelsOf,
  labelsTypst,
  PAPERS,
  PLAIN_SHEET,
  placesOn,
  sheetProblem,
} from '../../src/exports/labels.ts';
import { typeset } from '../../src/exports/typeset.ts';
import { compileFiles, JOURNAL, NOTE, note, PARTS } from '../journal/base.ts';

// jsqr is an independent reader of QR codes (ISO/IEC 18004): none of its code is in the writer's.
const decode = (jsqr as unknown as { default?: typeof jsqr }).default ?? jsqr;

const LABEL: Label = {
  bag: 14,
  off: 'Wheel cylinder',
  holds: ['2 bolts 5/16 UNF', '2 spring washers'],
  goesBack: 'heads inboard',
  filled: '12 Mar 2031',
  emptied: null,
  left: ['Wheel studs (2 of 5)'],
  hazards: ['asbestos', 'brake-fluid'],
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

/** Pixels of a printed sheet to the millimetre: 254 to the inch. */
const PER_MM = 10;

/** The sheets of a PDF as a printer sees them: their words, and the pixels of each label. PDFium is an independent reader of PDF. */
async function printed(labels: readonly Label[], sheet: LabelSheet) {
  const { pdf, cut } = typeset(labelsTypst(labels, sheet));
  const library = await PDFiumLibrary.init();
  const document = await library.loadDocument(pdf);
  const pages = [...document.pages()];
  const words = pages.map((page) => page.getText().replaceAll(/\s+/g, ' ')).join(' ');
  const drawn = await Promise.all(pages.map((page) => page.render({ scale: (PER_MM * 25.4) / 72, render: 'bitmap', colorSpace: 'BGRA' })));
  const codes = await Promise.all(placesOn(sheet, labels.length).map((place) => codeIn(drawn[place.sheet], place)));
  library.destroy();
  return { words, codes, cut, sheets: pages.length };
}

type Place = ReturnType<typeof placesOn>[number];

async function codeIn(page: { data: Uint8Array; width: number; height: number } | undefined, { x, y, width, height }: Place) {
  if (!page) throw new Error('there is no such sheet');
  const [left, top, across, down] = [x, y, width, height].map((mm) => Math.round(mm * PER_MM)) as [number, number, number, number];
  const raw = { width: page.width, height: page.height, channels: 4 } as const;
  const { data, info } = await sharp(page.data, { raw })
    .extract({ left, top, width: Math.min(across, page.width - left), height: Math.min(down, page.height - top) })
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return decode(new Uint8ClampedArray(data), info.width, info.height)?.data;
}

const NARROW: LabelSheet = { ...PLAIN_SHEET, paper: 'us-letter', columns: 3, rows: 10, left: 5, top: 13, gapAcross: 3, gapDown: 0 };
const MANY = Array.from({ length: 31 }, (_, n) => ({ ...LABEL, bag: n + 1, link: `https://example.org/van/bags.html#bag-${n + 1}` }));

describe.each([
  ['two by six on A4', PLAIN_SHEET, 3],
  ['three by ten on US Letter, four used already', { ...NARROW, skip: 4 }, 2],
])('sheets of %s', (_, sheet, sheets) => {
  test('each label as printed has its own code, read by an independent reader, and all its words', async () => {
    const { words, codes, cut, sheets: count } = await printed(MANY, sheet);
    expect(codes).toEqual(MANY.map(({ link }) => link));
    expect([cut, count]).toEqual([[], sheets]);
    for (const phrase of [
      'Caution: asbestos, brake fluid',
      'Off: Wheel cylinder',
      '2 bolts 5/16 UNF; 2 spring washers',
      'Goes back: heads inboard',
      'Gone elsewhere since: Wheel studs (2 of 5)',
      'Filled 12 Mar 2031',
    ]) {
      expect(words.split(phrase)).toHaveLength(MANY.length + 1);
    }
  });
});

test('a label with much to say has smaller letters, and says all of it', async () => {
  const long: Label = {
    ...LABEL,
    holds: Array.from({ length: 9 }, (_, n) => `${n + 1} screws no. ${n} x 3/4 in`),
    goesBack: 'the bent one at the top',
  };
  const { words, codes, cut } = await printed([long], NARROW);
  expect([cut, codes]).toEqual([[], [LABEL.link]]);
  expect(words).toContain('9 screws no. 8 x 3/4 in');
  expect(words).toContain('Goes back: the bent one at the top');
});

test('a label that cannot hold its words says so', () => {
  const tiny: LabelSheet = { ...PLAIN_SHEET, columns: 6, rows: 16 };
  expect(
    typeset(labelsTypst([LABEL, { ...LABEL, bag: 15, holds: [], off: null, goesBack: null, left: [], hazards: [] }], tiny)).cut,
  ).toEqual([14]);
});

test('a label has a code only where the journal has an address', () => {
  const with_ = labelsOf(record('address: https://example.org/van\n'), [14], (bag) => `bags.html#bag-${bag}`);
  expect(with_.map((label) => label.link)).toEqual(['https://example.org/van/bags.html#bag-14']);
  expect(labelsOf(record(''), [14, 15], (bag) => `${bag}`).map((label) => label.link)).toEqual([null]);
});

test('a label says of what is in the bag also the parts of the catalogue that its note does not name, and not what has left it', () => {
  const first = note(
    'parts: [{ part: drum, did: removed, to: bag 14 }, { part: studs, did: removed, count: 3, to: bag 14 }, { part: drum-donor, did: stored, to: bag 14 }]\nbags: [{ bag: 14, holds: [2 bolts, front brake drum in paper] }]',
  );
  const second = note('parts: [{ part: drum-donor, did: fitted }]').replace('2031-03-12', '2031-03-13');
  const { record: of } = compileFiles({ more: { [NOTE]: first, 'sessions/2031-03-13-later.md': second } });
  if (of === null) throw new Error('the journal does not compile');
  const [label] = labelsOf(of, [14], String);
  expect(label?.holds).toEqual(['2 bolts', 'front brake drum in paper', 'Wheel studs (3)']);
  expect(label?.left).toEqual(['Spare drum']);
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
  expect(Buffer.from(typeset(labelsTypst([hostile], PLAIN_SHEET)).pdf.subarray(0, 5)).toString()).toBe('%PDF-');
});

test('the label of a bag that was emptied says when', async () => {
  const more = {
    [NOTE]: note('bags: [{ bag: 14, holds: [5 studs] }]'),
    'sessions/2031-03-14-on.md': '---\ndate: 2031-03-14\ntitle: On\nemptied: 14\n---\n',
  };
  const { record: of } = compileFiles({ more });
  if (of === null) throw new Error('the journal does not compile');
  expect((await printed(labelsOf(of, [14], String), PLAIN_SHEET)).words).toContain('Filled 12 Mar 2031, emptied 14 Mar 2031');
});

test('a label names the hazards that what is in the bag carries', () => {
  const parts = PARTS.replace('- id: studs\n', '- id: studs\n  hazard: asbestos\n');
  const fields = 'parts: [{ part: studs, did: removed, to: bag 14 }]\nbags: [{ bag: 14, holds: [5 studs] }, { bag: 15, holds: [a nut] }]';
  const { record: of } = compileFiles({ parts, more: { [NOTE]: note(fields) } });
  if (of === null) throw new Error('the journal does not compile');
  expect(labelsOf(of, [14, 15], String).map(({ hazards }) => hazards)).toEqual([['asbestos'], []]);
});
