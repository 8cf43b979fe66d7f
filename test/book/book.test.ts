/** The book, read back by two programs that did not write it: PDFium, and pdf-lib for its structure. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PDFArray, PDFDict, PDFDocument, PDFHexString, PDFName, type PDFRawStream, PDFStream, PDFString } from '@cantoo/pdf-lib';
import { PDFiumLibrary } from '@hyzyla/pdfium';
import sharp from 'sharp';
import { beforeEach, describe, expect, test } from 'vitest';
import { run } from '../cli/run.ts';
import { folderWith } from '../load/folder.ts';

const NOTES: Readonly<Record<string, string>> = {
  'van/journal.yaml': `title: "The van: <b>#1</b> \\"best\\" $x$ \\\\ _it_"
vehicle: { make: A make, model: A model, year: 1952 }
arrived: 2031-03-01
currency: GBP
time-zone: Europe/London
locale: en-GB
people: { rh: { name: Ruth Haskell-Dray, rate: 10.00 } }
subsystems: { brakes: { name: Brakes } }
milestones: { stripped: Stripped to the frame }
stores: [shelf B2]
`,
  'van/parts/brakes.yaml': `- { id: drum, name: "Front drum", origin: original, hazard: asbestos }
- { id: drum-spare, name: "Spare drum", origin: donor, for: drum, at: shelf B2 }
- { id: hose, name: "Brake hose, #let x = 1", origin: original }
`,
  'van/sessions/2031-03-02-drum/index.md': `---
date: 2031-03-02
title: The drum *came* off
hours: [{ by: rh, on: brakes, time: 19:00-20:00 }]
parts: [{ part: drum, did: removed, to: shelf B2 }, { part: drum-spare, did: fitted }]
decisions: [{ part: drum, verdict: replace, with: drum-spare, because: "Cracked at [the] hub." }]
reached: [{ milestone: stripped }]
pictures: [{ file: drum.png, shows: [drum], view: as-found, caption: "As it came off.", alt: A drum. }]
---
[The drum](part:drum) came off with #panic("two") pulls; $x^2$ and @nobody say so. It cost £5 and 3/8 in, which is ½ of nothing.

![Three rings.](drum.png)

- one
- two

| a | b |
|---|--:|
| 1 | 2 |
`,
};

interface Book {
  readonly bytes: Buffer;
  readonly pages: readonly string[];
  readonly pdf: PDFDocument;
}
const book = {} as Book;

async function bookOf(...more: string[]): Promise<Buffer> {
  const cwd = folderWith(NOTES);
  const picture = await sharp({ create: { width: 900, height: 600, channels: 3, background: '#884422' } })
    .png()
    .toBuffer();
  writeFileSync(join(cwd, 'van/sessions/2031-03-02-drum/drum.png'), picture);
  const ran = await run(['book', '--content', 'van', '--out', 'van.pdf', ...more], { cwd });
  expect(ran).toEqual({ exit: 0, out: 'van.pdf\n', err: '' });
  return readFileSync(join(cwd, 'van.pdf'));
}

/** Set and read once, for all that looks at it. */
async function readBook(): Promise<void> {
  if (book.bytes) return;
  const bytes = await bookOf();
  const library = await PDFiumLibrary.init();
  const document = await library.loadDocument(bytes);
  const pages = [...document.pages()].map((page) => page.getText().replace(/\s+/g, ' '));
  document.destroy();
  library.destroy();
  Object.assign(book, { bytes, pages, pdf: await PDFDocument.load(bytes, { updateMetadata: false }) });
}

beforeEach(readBook);

const text = () => book.pages.join('\n');

describe('what the book says', () => {
  test('whatever a journal says is words, never an instruction to the typesetter', () => {
    expect(text()).toContain('The van: <b>#1</b> "best" $x$ \\ _it_');
    expect(text()).toContain('came off with #panic("two") pulls; $x^2$ and @nobody say so. It cost £5 and 3/8 in, which is ½ of nothing.');
    expect(text()).toContain('Brake hose, #let x = 1');
    expect(text()).toContain('Cracked at [the] hub.');
  });

  test('the story is in chapters by milestones, with who, how long, the decision and both captions of a picture', () => {
    for (const said of [
      'Stripped to the frame',
      'The drum *came* off',
      'Ruth Haskell-Dray 1 h',
      'replace with Spare drum',
      'As it came off. Three rings.',
    ]) {
      expect(text()).toContain(said);
    }
  });

  test('register, lives, departures, account, what comes with the vehicle and cautions are there', () => {
    for (const head of [
      'The register',
      'Lives',
      'Departures from the original',
      'The account',
      'What comes with the vehicle',
      'Cautions',
    ]) {
      expect(book.pages.filter((page) => page.includes(head)).length, head).toBeGreaterThan(1);
    }
  });

  test('each page that the index gives for a part is one on which the book speaks of it or shows it', () => {
    const index = book.pages.find((page) => page.startsWith('Index of parts')) ?? '';
    const given = /Front drum ([\d, ]+)/.exec(index)?.[1]?.split(', ').map(Number) ?? [];
    expect(given.length).toBeGreaterThan(3);
    for (const n of given) expect(book.pages[n - 1], `page ${n}`).toMatch(/drum|As it came off/i);
  });
});

describe('what the book is', () => {
  const catalog = () => book.pdf.catalog;
  const metadata = () => Buffer.from((catalog().lookup(PDFName.of('Metadata'), PDFStream) as PDFRawStream).contents).toString('utf8');

  test('it says that it is PDF/A-3a (ISO 19005-3), is tagged, and has a language, a title and the day of the record', () => {
    expect(metadata()).toMatch(/pdfaid:part[^0-9]{1,3}3/);
    expect(metadata()).toMatch(/pdfaid:conformance[^A-Za-z]{1,3}A/);
    expect(catalog().lookup(PDFName.of('MarkInfo'), PDFDict).get(PDFName.of('Marked'))?.toString()).toBe('true');
    expect(catalog().get(PDFName.of('StructTreeRoot'))).toBeDefined();
    expect(catalog().lookup(PDFName.of('Lang'), PDFString)?.asString()).toBe('en-GB');
    expect(metadata()).toContain('2031-03-02');
    expect(book.pdf.getTitle()).toContain('The van');
  });

  test('it has bookmarks, and says what its pictures show', () => {
    expect(catalog().get(PDFName.of('Outlines'))).toBeDefined();
    const alternatives = book.pdf.context
      .enumerateIndirectObjects()
      .flatMap(([, object]) => (object instanceof PDFDict ? [object.get(PDFName.of('Alt'))] : []))
      .flatMap((alt) => (alt instanceof PDFString || alt instanceof PDFHexString ? [alt.decodeText()] : []));
    expect(alternatives).toContain('A drum.');
  });

  test('every face in it is in it whole enough to print, and is one that comes with the program', () => {
    const fonts = book.pdf.context.enumerateIndirectObjects().flatMap(([, object]) => {
      return object instanceof PDFDict && object.get(PDFName.of('Type')) === PDFName.of('FontDescriptor') ? [object] : [];
    });
    const names = fonts.map((font) =>
      font
        .lookup(PDFName.of('FontName'), PDFName)
        .decodeText()
        .replace(/^[A-Z]{6}\+/, '')
        .replace(/-.*/, ''),
    );
    expect([...new Set(names)].sort()).toEqual(['BarlowSemiCondensed', 'SourceSerif4']);
    for (const font of fonts) expect(font.get(PDFName.of('FontFile2')) ?? font.get(PDFName.of('FontFile3'))).toBeDefined();
  });

  test('the tables that it was made from are attached, each with what it is to the book', () => {
    const files = catalog().lookup(PDFName.of('AF'), PDFArray);
    const names = files.asArray().map((_, n) => {
      const file = files.lookup(n, PDFDict);
      expect(file.get(PDFName.of('AFRelationship'))?.toString()).toBe('/Source');
      return (file.lookup(PDFName.of('UF')) as PDFString | PDFHexString).decodeText();
    });
    expect(names).toEqual(expect.arrayContaining(['register.csv', 'entries.csv', 'whereabouts.csv']));
  });
});

test('the same record gives the same bytes', async () => {
  expect((await bookOf()).equals(book.bytes)).toBe(true);
});

test.each([
  ['a5', [420, 595]],
  ['us-letter', [612, 792]],
])('on %s', async (paper, size) => {
  const pdf = await PDFDocument.load(await bookOf('--paper', paper), { updateMetadata: false });
  const { width, height } = pdf.getPage(4).getSize();
  expect([Math.round(width), Math.round(height)]).toEqual(size);
});

test('a copy without money has hours and no nought of money', async () => {
  const library = await PDFiumLibrary.init();
  const document = await library.loadDocument(await bookOf('--copy', 'public'));
  const said = [...document.pages()].map((page) => page.getText()).join(' ');
  document.destroy();
  library.destroy();
  expect(said).toContain('Time spent, by subsystem');
  expect(said).not.toMatch(/The account|\b0\.00\b|£(?!5 and)/);
});

test('a book is never written over another, nor on a paper nobody has', async () => {
  const cwd = folderWith({ ...NOTES, 'van.pdf': 'mine' });
  expect((await run(['book', '--content', 'van', '--out', 'van.pdf', '--paper', 'a9'], { cwd })).exit).toBe(2);
  expect((await run(['book', '--content', 'van', '--out', 'van.txt'], { cwd })).exit).toBe(2);
});
