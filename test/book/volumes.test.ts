/** A book in volumes, read back by a program that did not write it (PDFium). */
import { readFileSync } from 'node:fs';
import { PDFiumLibrary } from '@hyzyla/pdfium';
import { beforeEach, describe, expect, test } from 'vitest';
import { makeBook } from '../../src/book/make-book.ts';
import { intoVolumes, type Piece, pagesOf } from '../../src/book/volumes.ts';
import { compileJournal } from '../../src/journal/pipeline.ts';
import { NO_PICTURES } from '../../src/photos/plan.ts';
import { folderWith } from '../load/folder.ts';

const piece = (pages: number, evening: string | null = null): Piece => ({
  source: 'x'.repeat(pages * 4000),
  chapter: 'One',
  goesOn: '',
  evening,
});

describe('pieces are shared out', () => {
  test('a book that can be bound as one is one', () => {
    expect(intoVolumes([piece(200), piece(200)])).toHaveLength(1);
  });

  test('a longer one has volumes of about the same thickness, in order, and nothing is lost', () => {
    const pieces = Array.from({ length: 1000 }, (_, n) => piece(1, String(n)));
    const volumes = intoVolumes(pieces);
    expect(volumes.flat()).toEqual(pieces);
    expect(volumes.map((volume) => volume.length)).toEqual([333, 334, 333]);
  });

  test('what cannot be cut is in one volume, however long it is', () => {
    expect(intoVolumes([piece(1), piece(900), piece(1)]).map((volume) => volume.length)).toEqual([1, 1, 1]);
  });

  test('a picture takes room that its words do not', () => {
    expect(pagesOf({ ...piece(0), source: '#picture(path: "/a.svg")' })).toBeGreaterThan(0.5);
  });
});

const evening = (day: number, body: string, more = ''): [string, string] => [
  `sessions/2031-03-0${day}-e.md`,
  `---\ndate: 2031-03-0${day}\ntitle: Evening ${day}\n${more}---\n${body}\n`,
];

const NOTES: Readonly<Record<string, string>> = Object.fromEntries([
  [
    'journal.yaml',
    `title: The van
vehicle: { make: A make, model: A model, year: 1952 }
arrived: 2031-03-01
time-zone: Europe/London
locale: en-GB
subsystems: { brakes: { name: Brakes } }
milestones: { stripped: Stripped to the frame }
threads: { drum: { title: The drum, parts: [drum] } }
stores: [shelf B2]
`,
  ],
  ['parts/brakes.yaml', '- { id: drum, name: Front drum, origin: original }\n- { id: hose, name: Brake hose, origin: original }\n'],
  evening(1, '[The drum](part:drum) came off.', 'parts: [{ part: drum, did: removed, to: shelf B2 }]\n'),
  evening(2, `[The hose](part:hose) is sound. ${'It was a long evening. '.repeat(40)}`),
  evening(3, '[The drum](part:drum) again.', 'parts: [{ part: drum, did: fitted }]\nreached: [{ milestone: stripped }]\n'),
]);

/** The pages of each volume, as text. */
async function volumesOf(mostPages: number): Promise<string[][]> {
  const files = Object.entries(NOTES).map(([path, text]) => ({ path, bytes: Buffer.from(text) }));
  const { record } = compileJournal({ files, assets: [], problems: [] }, { today: '2031-04-01' });
  if (record === null) throw new Error('it does not compile');
  const workspace = folderWith({});
  const site = { ...record, pictures: NO_PICTURES, warnings: [], noteHtml: async () => '' };
  const pdfs = await makeBook(site, { paper: 'a4', workspace, attached: [], mostPages, progress: () => undefined });
  const library = await PDFiumLibrary.init();
  const volumes: string[][] = [];
  for (const pdf of pdfs) {
    const document = await library.loadDocument(readFileSync(pdf));
    volumes.push([...document.pages()].map((page) => page.getText().replace(/\s+/g, ' ')));
    document.destroy();
  }
  library.destroy();
  return volumes;
}

/** Set and read once, for all that looks at them. */
const set: { volumes?: string[][] } = {};

describe('a book in volumes', () => {
  let volumes: string[][] = [];
  beforeEach(async () => {
    set.volumes ??= await volumesOf(0.3);
    volumes = set.volumes;
  });
  const pageWith = (said: string): string => {
    const n = volumes.findIndex((pages) => pages.some((page) => page.includes(said)));
    return `${n + 1}, ${(volumes[n] ?? []).findIndex((page) => page.includes(said)) + 1}`;
  };

  test('each says which it is, and the first what each holds', () => {
    expect(volumes.length).toBeGreaterThan(2);
    for (const [n, [title]] of volumes.entries()) expect(title).toContain(`Volume ${n + 1} of ${volumes.length}`);
    expect(volumes[0]?.join(' ')).toMatch(/Bound in \w+ volumes Volume Holds 1 The vehicle/);
  });

  test('a chapter that goes on says so', () => {
    expect(volumes.flat().filter((page) => page.includes('Stripped to the frame, continued'))).not.toEqual([]);
  });

  test('the index is in the last one, and gives volume and page', () => {
    const index = volumes.at(-1)?.find((page) => page.startsWith('Index of parts')) ?? '';
    expect(volumes.slice(0, -1).flat().join(' ')).not.toContain('Index of parts');
    const [, volume, page] = /Front drum (\d+): (\d+)/.exec(index) ?? [];
    expect(`${volume}, ${page}`).toBe(pageWith('The drum came off.'));
  });

  test('a thread gives volume and page of an evening that stands in another', () => {
    const thread = volumes.flat().find((page) => page.includes('Stories that run through many evenings')) ?? '';
    const [, volume, page] = /Evening 1 volume (\d+), page (\d+)/.exec(thread) ?? [];
    expect(`${volume}, ${page}`).toBe(pageWith('1 March 2031 Evening 1'));
  });
});

test('a short one has no volumes, and says nothing of any, nor of pictures where it has none', async () => {
  const volumes = await volumesOf(400);
  expect(volumes).toHaveLength(1);
  expect(volumes.flat().join(' ')).not.toMatch(/[Vv]olume|List of pictures/);
});
