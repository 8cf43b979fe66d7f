/** Film that lies in the journal goes into the site, cleaned of what its camera wrote: what its pages link to plays from a disk. */
import { createHash } from 'node:crypto';
import { chmodSync, constants, copyFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { type EntryFacts, openEntryCache } from '../disk/entry-cache.ts';
import { pathWithin } from '../disk/path-within.ts';
import type { Journal } from '../journal/model.ts';
import { cleanFilm } from '../photos/clean-film.ts';
import { clipsOf } from '../photos/clips.ts';
import { linkInto } from '../photos/place-file.ts';
import { fileAddress } from './addresses.ts';

/** The clips of a journal that are files of it, each once. */
export function clipFiles(journal: Journal): readonly string[] {
  return [...clipsOf(journal).keys()];
}

/** Raise it when a film is cleaned otherwise. */
const EDITION = 4;
const NAME = 'film';
/** What the cache may hold of films besides those of this journal. */
const MOST_CACHE_BYTES = 8 * 1024 ** 3;

/**
 * Films are large and seldom change: each is copied once, into the cache, and linked from there into every new
 * site. The site never shares a file with the journal, so that nothing done to it reaches the restorer's own.
 *
 * @param folder the journal folder
 * @param mostCacheBytes of films that this journal does not name
 * @throws the file system's error when a clip cannot be read or the site cannot be written
 */
export async function placeClips(
  journal: Journal,
  folder: string,
  cache: string,
  into: string,
  mostCacheBytes = MOST_CACHE_BYTES,
): Promise<void> {
  const entries = openEntryCache(cache, 'film');
  const clips = clipFiles(journal);
  for (const path of clips) {
    const from = join(folder, path);
    const { size, mtimeMs, ctimeMs } = statSync(from);
    const key = createHash('sha256').update(`${EDITION}\0${path}\0${size}\0${mtimeMs}\0${ctimeMs}`).digest('hex').slice(0, 16);
    const entry = entries.find(key, [NAME]) ?? (await entries.make(key, async (unfinished) => copied(from, join(unfinished, NAME))));
    linkInto(join(entry.folder, NAME), pathWithin(into, fileAddress(path)));
  }
  if (clips.length > 0) entries.sweep(mostCacheBytes);
}

/** By reference where the disk can; a film that another program is writing is copied again by the next build. */
function copied(from: string, to: string): EntryFacts {
  copyFileSync(from, to, constants.COPYFILE_FICLONE);
  chmodSync(to, 0o644);
  cleanFilm(to);
  return { colour: '#000000' };
}
