/** A compiled journal → a site in a folder. */

import { cpSync, readdirSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { makeFolder } from '../disk/folders.ts';
import { pathWithin } from '../disk/path-within.ts';
import { dataFilesOf } from '../exports/data-files.ts';
import type { Diagnostic } from '../journal/diagnostics/diagnostic.ts';
import type { JournalRecord } from '../journal/record.ts';
import { openNoteStore } from '../markdown/note-store.ts';
import { buildPictures, preparePictures } from '../photos/pictures.ts';
import { buildWithAstro } from './astro.ts';
import { writeScripts } from './client-scripts.ts';
import { dayOnPages } from './day-on-pages.ts';
import { type EditionStore, editionStore } from './edition-store.ts';
import { FEED, feedOf } from './feed.ts';
import { joinStyles } from './join-styles.ts';
import { startAsking } from './kept/asking.ts';
import { keptPages } from './kept/kept-pages.ts';
import { compiledCode, type PageMaker, pageMakerOf } from './page-code.ts';
import { placeClips } from './place-clips.ts';
import { setRecord } from './record.ts';
import { siteRecord } from './site-record.ts';
import { PROGRAM } from './tool-digest.ts';
import { pagesNotIn } from './views/frame/contents.ts';
import { counted } from './views/page/words.ts';
import { openWorkshop, type Workshop } from './workshop.ts';
import { insteadOfAstro, type PagesToWrite, writePages } from './write-pages.ts';

export interface BuildSite {
  readonly record: JournalRecord;
  readonly warnings: readonly Diagnostic[];
  /** The journal folder. */
  readonly folder: string;
  readonly cache: string;
  /** An empty folder that the site goes into. */
  readonly into: string;
  /** Another empty one on the same disk. */
  readonly aside: string;
  /** Told in a few words what is being done. */
  progress(text: string): void;
}

/**
 * Makes every page, picture, script and download.
 *
 * @returns pictures that turned out to be unusable while they were rendered
 * @throws what Astro or the file system throws; the folder is then good for nothing
 */
export async function buildSite({ record, warnings, folder, cache, into, aside, progress }: BuildSite): Promise<readonly Diagnostic[]> {
  const places = { root: folder, cache };
  const prepared = await preparePictures(record.journal, places);
  // Astro empties the folder it builds into, so what is not Astro's waits beside it.
  const pictures = await buildPictures(record.journal, prepared.plan, aside, {
    ...places,
    onProgress: ({ done, total, secondsLeft }) =>
      progress(`Pictures: ${done} of ${total}${secondsLeft === null ? '' : `, about ${Math.ceil(secondsLeft)} s left`}`),
  });
  if (pictures.diagnostics.some((each) => each.severity === 'error')) return pictures.diagnostics;
  const store = openNoteStore(cache, folder);
  const asking = startAsking();
  const { site, kept } = siteRecord(record, pictures.plan, warnings, store, asking);
  setRecord(site);
  progress(`Pages of ${counted(record.journal.sessions.length, 'session')} and ${counted(record.journal.positions.size, 'position')}`);
  const edition = editionStore(cache);
  const pages = {
    into,
    without: pagesNotIn(record),
    day: dayOnPages(record),
    kept: keptPages({ ...site, asking }, cache, folder),
    onPage: (done: number, total: number) => progress(`Pages: ${done} of ${total}`),
  };
  const apart = beginApart(record);
  await buildPages(pages, cache, edition);
  store.save(await kept);
  progress('Scripts and downloads');
  moveInto(aside, into);
  await placeClips(record.journal, folder, cache, into);
  await writeScripts(join(into, 'scripts'), edition);
  const feed = await feedOf(site);
  if (feed !== null) writeFileSync(join(into, FEED), feed);
  await writeData(record, apart, into);
  return [];
}

/**
 * Astro puts the code of the pages where it will find its packages only if that is below the folder it is run
 * in and that has packages above it. So it is run in a folder of the cache, a new one for each process. Code that was
 * kept is not compiled again.
 */
async function buildPages(pages: PagesToWrite, cache: string, store: EditionStore): Promise<void> {
  const workshop = openWorkshop(cache);
  const { into } = pages;
  const write = (maker: PageMaker): Promise<void> => writePages(maker, pages);
  try {
    const code = store.read('pages');
    if (code === null) await compileAndWrite(workshop, store, into, write);
    else {
      cpSync(join(PROGRAM, 'public'), into, { recursive: true });
      await write(await pageMakerOf(code, store.folderFor('pages'), workshop.folder));
    }
    joinStyles(into);
  } finally {
    workshop.close();
  }
}

async function compileAndWrite(
  workshop: Workshop,
  store: EditionStore,
  into: string,
  write: (maker: PageMaker) => Promise<void>,
): Promise<void> {
  const keep = (): void => {
    const code = compiledCode(workshop.folder);
    if (code !== null) store.write('pages', code);
  };
  const stand = process.cwd();
  try {
    process.chdir(workshop.folder);
    await buildWithAstro(workshop, { outDir: into, integrations: [insteadOfAstro(write, keep)] });
  } finally {
    process.chdir(stand);
  }
}

/** Moves everything in a folder into another on the same disk. */
function moveInto(from: string, to: string): void {
  for (const name of readdirSync(from)) renameSync(join(from, name), join(to, name));
}

/** Downloads that threads of their own make while the pages are made, by their paths. */
function beginApart(record: JournalRecord): ReadonlyMap<string, Promise<string | Uint8Array>> {
  const begun = dataFilesOf(record).filter(({ isMadeApart }) => isMadeApart);
  return new Map(
    begun.map(({ path, make }) => {
      const made = Promise.resolve(make(record));
      // Whoever waits for it is told of a fault; where the pages fail first, nobody does.
      made.catch(() => undefined);
      return [path, made];
    }),
  );
}

async function writeData(record: JournalRecord, apart: ReturnType<typeof beginApart>, into: string): Promise<void> {
  for (const { path, make } of dataFilesOf(record)) {
    const file = pathWithin(into, path);
    makeFolder(dirname(file));
    writeFileSync(file, await (apart.get(path) ?? make(record)));
  }
}
