/**
 * What is handed over of a long journal: the book and the archive of many sessions with pictures, each a run of the command
 * with empty caches. The same pictures are laid down again and again, told apart by a comment in the file, so that each is
 * rendered as one of its own.
 */
import { mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { Aim } from './aims.ts';
import { writeJournal } from './generate.ts';
import { measureProcess, type Usage } from './measure-process.ts';
import { remarked } from './pictures/remarked.ts';

/** What is measured. */
export interface HandedOverRun {
  readonly sessions: number;
  /** To each session. */
  readonly pictures: number;
  readonly megapixels: number;
  readonly seed: number;
}

export const A_LONG_ONE: HandedOverRun = { sessions: 1000, pictures: 3, megapixels: 2, seed: 1952 };

/** Pictures that are really taken. */
const TAKEN = 24;
/** The typesetter holds all pages and pictures till the end; three thousand are no reason for more. */
const AIM_OF_MEMORY = 4;
const PROJECT = join(import.meta.dirname, '../..');
const DEMO = join(PROJECT, 'content');

/**
 * Measures the demo, then a long journal, and prints a line for each.
 *
 * @param folder for everything that is written; made when it is not there
 */
export async function measureHandedOver(folder: string, asked: HandedOverRun = A_LONG_ONE): Promise<Aim[]> {
  const journal = join(folder, 'journal');
  await layJournal(journal, folder, asked);
  console.log('Handed over: seconds, peak of memory, size');
  await measureOf(DEMO, join(folder, 'demo'), 'the demo');
  const { sessions, pictures } = asked;
  const words = `${sessions} sessions, ${sessions * pictures} pictures`;
  const { book, archive } = await measureOf(journal, join(folder, 'long'), words);
  return [
    { what: `book of ${words}: peak of memory`, figure: book.peak / 1e9, below: AIM_OF_MEMORY, unit: ' GB' },
    { what: `archive of ${words}: peak of memory`, figure: archive.peak / 1e9, below: AIM_OF_MEMORY, unit: ' GB' },
  ];
}

async function measureOf(journal: string, folder: string, words: string): Promise<{ readonly book: Usage; readonly archive: Usage }> {
  await mkdir(folder, { recursive: true });
  const [book, archive] = [join(folder, 'book.pdf'), join(folder, 'archive')];
  const command = (name: string, out: string) =>
    measureProcess(
      {
        argv: [join(PROJECT, 'src/cli/asfound.mjs'), name, '--content', journal, '--out', out],
        env: { ASFOUND_CACHE: join(folder, 'cache'), SOURCE_DATE_EPOCH: String(Date.UTC(2027, 0, 1) / 1000) },
      },
      folder,
    );
  const ofBook = await command('book', book);
  tell(`book of ${words}`, ofBook, (await stat(book)).size);
  const ofArchive = await command('archive', archive);
  tell(`archive of ${words}, pictures rendered before`, ofArchive, await sizeOf(archive));
  await rm(archive, { recursive: true });
  return { book: ofBook, archive: ofArchive };
}

function tell(what: string, { wall, user, peak }: Usage, bytes: number): void {
  const figures = [
    `${wall.toFixed(1)} s`,
    `${user.toFixed(1)} s of processors`,
    `${(peak / 1e9).toFixed(2)} GB`,
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
async function layJournal(journal: string, folder: string, { sessions, pictures, megapixels, seed }: HandedOverRun): Promise<void> {
  await writeJournal(journal, sessions, seed);
  const taken = await takePictures(join(folder, 'taken'), megapixels, seed);
  const notes = (await readdir(join(journal, 'sessions'))).filter((name) => name.endsWith('.md')).sort();
  for (const [n, name] of notes.entries()) {
    const at = join(journal, 'sessions', basename(name, '.md'));
    await mkdir(at);
    await rename(`${at}.md`, join(at, 'index.md'));
    const files = Array.from({ length: pictures }, (_, i) => `picture-${i + 1}.jpg`);
    const entries = files.map((file, i) => `  - { file: ${file}, caption: "Picture ${i + 1} of evening ${n + 1}." }\n`).join('');
    const note = await readFile(join(at, 'index.md'), 'utf8');
    await writeFile(join(at, 'index.md'), note.replace(/^---\n/, `---\npictures:\n${entries}`));
    for (const [i, file] of files.entries()) {
      const picture = taken[(n * pictures + i) % taken.length] as Buffer;
      await writeFile(join(at, file), remarked(picture, `${n} ${i}`));
    }
  }
}

async function takePictures(folder: string, megapixels: number, seed: number): Promise<readonly Buffer[]> {
  await mkdir(folder, { recursive: true });
  const argv = [join(import.meta.dirname, 'pictures/camera.ts'), folder, String(TAKEN), String(megapixels), String(seed)];
  await measureProcess({ argv, env: {} }, folder);
  const files = (await readdir(folder)).filter((file) => file.endsWith('.jpg')).sort();
  return Promise.all(files.map((file) => readFile(join(folder, file))));
}
