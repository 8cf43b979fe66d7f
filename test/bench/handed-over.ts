/**
 * What is handed over of a long journal: the book and the archive of many sessions with few pictures and with many, each a run
 * of the command, the first of a picture with nothing kept of it. Every picture has pixels of its own.
 */
import { link, mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { Aim } from './aims.ts';
import { writeJournal } from './generate.ts';
import { measureProcess, type Usage } from './measure-process.ts';

/** What is measured. */
export interface HandedOverRun {
  readonly sessions: number;
  /** In the whole journal, spread evenly; the fewest first. */
  readonly pictures: readonly number[];
  readonly megapixels: number;
  readonly seed: number;
}

export const A_LONG_ONE: HandedOverRun = { sessions: 1000, pictures: [0, 1000, 3000], megapixels: 1.2, seed: 1952 };

/** Three thousand pictures are no reason for more. */
const AIM_OF_MEMORY = 2;
/** Three times as many pictures take hardly more. */
const AIM_OF_GROWTH = 1.2;
const PROJECT = join(import.meta.dirname, '../..');
const DEMO = join(PROJECT, 'content');

/**
 * Measures the demo, then the long journal with each number of pictures, and prints a line for each.
 *
 * @param folder for everything that is written; made when it is not there
 */
export async function measureHandedOver(folder: string, asked: HandedOverRun = A_LONG_ONE): Promise<Aim[]> {
  console.log('Handed over: seconds, processors, peak of memory, size');
  await measureOf(DEMO, folder, 'the demo');
  const taken = await takePictures(join(folder, 'taken'), asked);
  const all: Measured[] = [];
  for (const count of asked.pictures) {
    const journal = join(folder, `journal-${count}`);
    await layJournal(journal, taken.slice(0, count), asked);
    all.push(await measureOf(journal, folder, `${asked.sessions} sessions, ${count} pictures`));
    await rm(journal, { recursive: true });
  }
  return (['book', 'archive'] as const).flatMap((what) => aimsOf(what, all));
}

/** The peak with the most pictures against a fixed bound, and against the peak with fewer. */
function aimsOf(what: 'book' | 'archive', all: readonly Measured[]): Aim[] {
  const [fewer, most] = [all.at(-2), all.at(-1)];
  if (!fewer || !most) return [];
  return [
    { what: `${what} of ${most.words}: peak of memory`, figure: most[what].peakOfTwo / 1e9, below: AIM_OF_MEMORY, unit: ' GB' },
    {
      what: `${what} of ${most.words}: peak, to ${fewer.words}`,
      figure: most[what].peakOfTwo / fewer[what].peakOfTwo,
      below: AIM_OF_GROWTH,
      unit: '',
    },
  ];
}

interface Measured {
  readonly words: string;
  readonly book: Usage;
  readonly archive: Usage;
}

async function measureOf(journal: string, folder: string, words: string): Promise<Measured> {
  await mkdir(folder, { recursive: true });
  const [book, archive] = [join(folder, 'bound/book.pdf'), join(folder, 'archive')];
  const command = (name: string, out: string) =>
    measureProcess(
      {
        argv: [join(PROJECT, 'src/cli/asfound.mjs'), name, '--content', journal, '--out', out],
        env: { ASFOUND_CACHE: join(folder, 'cache'), SOURCE_DATE_EPOCH: String(Date.UTC(2027, 0, 1) / 1000) },
      },
      folder,
    );
  const ofBook = await command('book', book);
  tell(`book of ${words}`, ofBook, await sizeOf(join(folder, 'bound')));
  const ofArchive = await command('archive', archive);
  tell(`archive of ${words}, pictures rendered before`, ofArchive, await sizeOf(archive));
  await rm(archive, { recursive: true });
  await rm(join(folder, 'bound'), { recursive: true });
  return { words, book: ofBook, archive: ofArchive };
}

function tell(what: string, { wall, user, peakOfTwo }: Usage, bytes: number): void {
  const figures = [
    `${wall.toFixed(1)} s`,
    `${user.toFixed(1)} s of processors`,
    `${(peakOfTwo / 1e9).toFixed(2)} GB`,
    `${(bytes / 1e6).toFixed(0)} MB`,
  ];
  console.log(`  ${what.padEnd(68)}${figures.join('   ')}`);
}

async function sizeOf(folder: string): Promise<number> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const sizes = await Promise.all(
    entries.filter((entry) => entry.isFile()).map(async (entry) => (await stat(join(entry.parentPath, entry.name))).size),
  );
  return sizes.reduce((sum, size) => sum + size, 0);
}

/** A generated journal in which each note has a folder, with pictures that its front matter names. */
async function layJournal(journal: string, pictures: readonly string[], { sessions, seed }: HandedOverRun): Promise<void> {
  await writeJournal(journal, sessions, seed);
  const notes = (await readdir(join(journal, 'sessions'))).filter((name) => name.endsWith('.md')).sort();
  const first = (n: number): number => Math.floor((n * pictures.length) / notes.length);
  for (const [n, name] of notes.entries()) {
    const at = join(journal, 'sessions', basename(name, '.md'));
    await mkdir(at);
    await rename(`${at}.md`, join(at, 'index.md'));
    const own = pictures.slice(first(n), first(n + 1));
    if (own.length === 0) continue;
    const entries = own.map((_, i) => `  - { file: picture-${i + 1}.jpg, caption: "Picture ${i + 1} of evening ${n + 1}." }\n`).join('');
    const note = await readFile(join(at, 'index.md'), 'utf8');
    await writeFile(join(at, 'index.md'), note.replace(/^---\n/, `---\npictures:\n${entries}`));
    for (const [i, picture] of own.entries()) await link(picture, join(at, `picture-${i + 1}.jpg`));
  }
}

async function takePictures(folder: string, { pictures, megapixels, seed }: HandedOverRun): Promise<readonly string[]> {
  await mkdir(folder, { recursive: true });
  const most = String(Math.max(...pictures));
  const argv = [join(import.meta.dirname, 'pictures/camera.ts'), folder, most, String(megapixels), String(seed), most];
  await measureProcess({ argv, env: {} }, folder);
  const files = (await readdir(folder)).filter((file) => file.endsWith('.jpg')).sort();
  return files.map((file) => join(folder, file));
}
