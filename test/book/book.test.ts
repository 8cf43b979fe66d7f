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
threads: { hub: { title: "Two drums, and a crack", parts: [drum, drum-spare] } }
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
measured: [{ part: drum, what: inside diameter, as: found, value: 9.070 in, limits: 9.000..9.060 in }]
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
  'van/sessions/2031-03-01-before.md':
    '---\ndate: 2031-03-01\ntitle: The evening before\n---\nNothing was shown of it, and little was done.\n',
  'van/sessions/2031-03-03-after.md':
    '---\ndate: 2031-03-03\ntitle: The evening after\nprivate: Kept to myself\nreached: [{ milestone: stripped }]\n---\nNothing was shown of this one either.\n',
};

interface Book {
  readonly bytes: Buffer;
  readonly pages: readonly string[];
  readonly pdf: PDFDocument;
}
const book = {} as Book;

async function bookOf(...more: string[]): Promise<Buffer> {
  const cwd = folderWith(NOTES);
  const picture = await sharp({ create: { width: 900, height: 300, channels: 3, background: '#884422' } })
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
  Object.assign(book, { bytes, pages: await textOf(bytes), pdf: await PDFDocument.load(bytes, { updateMetadata: false }) });
}

/** The words of each page, with single blanks. */
async function textOf(bytes: Buffer): Promise<readonly string[]> {
  const library = await PDFiumLibrary.init();
  const document = await library.loadDocument(bytes);
  const pages = [...document.pages()].map((page) => page.getText().replace(/\s+/g, ' '));
  document.destroy();
  library.destroy();
  return pages;
}

/** How many lines stand above and below the one picture of a page, which is brown. */
async function linesRound(n: number): Promise<{ readonly above: number; readonly below: number }> {
  const library = await PDFiumLibrary.init();
  const document = await library.loadDocument(book.bytes);
  const { data, width, height } = await document.getPage(n).render({ scale: 1, render: async ({ data: pixels }) => pixels });
  document.destroy();
  library.destroy();
  const rows = Array.from({ length: height }, (_, y) => {
    const row = Array.from({ length: width }, (_unused, x) =>
      [...data.subarray((y * width + x) * 4, (y * width + x) * 4 + 3)].sort((a, b) => a - b),
    );
    const brown = row.filter(([low = 0, , high = 0]) => high - low > 80).length;
    return brown > width / 3 ? 'picture' : row.some(([low = 255]) => low < 160) ? 'ink' : 'blank';
  });
  const lines = (some: readonly string[]) => some.filter((row, y) => row === 'ink' && some[y - 1] !== 'ink').length;
  return { above: lines(rows.slice(0, rows.indexOf('picture'))), below: lines(rows.slice(rows.lastIndexOf('picture') + 1)) };
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

  test('a picture stands with the words of its evening: not over those of the one before, nor under those of the next', async () => {
    const n = book.pages.findIndex((page) => page.includes('Three rings. 2 March 2031.') && page.includes('The evening before'));
    expect(book.pages[n]).toContain('Nothing was shown of this one either.');
    const { above, below } = await linesRound(n);
    // Above: of the evening before day, title and words, then those of its own; below: its facts, then the next evening.
    expect(above).toBeGreaterThan(8);
    expect(below).toBeGreaterThan(3);
  });

  test('the contents give the page on which each chapter begins', () => {
    const contents = book.pages.filter((page) => / \. \. \. /.test(page)).join(' ');
    for (const chapter of ['Stripped to the frame', 'Threads', 'The register', 'Lives', 'Measurements', 'Index of parts']) {
      const page = Number(new RegExp(`${chapter} (?:\\. ?)+(\\d+)`).exec(contents)?.[1]);
      expect(book.pages[page - 1], `${chapter}: ${page}`).toMatch(new RegExp(`^(?:\\d+ The van: .{0,40})?${chapter}`));
    }
  });

  test('threads are told by the passages that name their parts, with the page of the evening', () => {
    const thread = book.pages.find((page) => page.includes('Stories that run through many evenings')) ?? '';
    expect(thread).toContain('Two drums, and a crack');
    expect(thread).toMatch(/2 March 2031 The drum \*came\* off page \d+ The drum came off with #panic/);
    expect(thread).toContain('Front drum: removed, to shelf B2. Spare drum: fitted.');
    expect(thread).not.toContain('The evening after');
  });

  test('each series of measurements has its limits and every reading', () => {
    expect(text()).toContain('9.000 to 9.060 in 9.070 in, as found, outside limits, 2 Mar 2031');
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
    expect(metadata()).toContain('2031-03-03');
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
    expect(names.filter((name) => /\.(?:md|yaml)$/.test(name))).toEqual([]);
  });

  test('the workshop copy has the notes with it too, letter by letter', async () => {
    const pdf = await PDFDocument.load(await bookOf('--copy', 'workshop'), { updateMetadata: false });
    const attached = new Map(pdf.getAttachments().map(({ name, data }) => [name, Buffer.from(data).toString('utf8')]));
    for (const [path, said] of Object.entries(NOTES))
      expect(attached.get(path.replace('van/', '').replaceAll('/', ' - ')), path).toBe(said);
  });
});

describe('an evening whose words name nothing of what was done', () => {
  const HOSE = '2031-03-04-hose';
  let pages: readonly string[] = [];
  beforeEach(async () => {
    if (pages.length > 0) return;
    const note = `---
date: 2031-03-04
title: Short of time
parts:
  - { part: hose, did: [inspected, cleaned], condition: 2, note: Perished at the end. }
  - { part: drum-spare, note: Rings a little }
pictures: [{ file: bare.png, shows: [hose] }]
---
It rained.
`;
    const cwd = folderWith({ ...NOTES, [`van/sessions/${HOSE}/index.md`]: note });
    const grey = await sharp({ create: { width: 300, height: 200, channels: 3, background: '#c8c8c8' } })
      .png()
      .toBuffer();
    for (const name of ['2031-03-02-drum/drum.png', `${HOSE}/bare.png`, `${HOSE}/loose.png`])
      writeFileSync(join(cwd, 'van/sessions', name), grey);
    expect((await run(['book', '--content', 'van', '--out', 'van.pdf'], { cwd })).exit).toBe(0);
    pages = await textOf(readFileSync(join(cwd, 'van.pdf')));
  });
  const told = () => pages.find((page) => page.includes('It rained.')) ?? '';

  test('is told by its actions, so that the index leads to a page that names the part', () => {
    expect(told()).toContain(
      'Brake hose, #let x = 1: inspected and cleaned. Perished at the end. Condition: 2, moderately strong symptoms. Spare drum. Rings a little.',
    );
  });

  test('has its picture without words, also in the list of pictures, and says of those that lie by it', () => {
    expect(told()).toContain('Brake hose, #let x = 1. 4 March 2031.');
    expect(told()).toContain('1 more picture lies by this note, and nobody said what it shows.');
    expect(pages.filter((page) => page.includes('Brake hose, #let x = 1. 4 March 2031.')).length).toBe(2);
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
