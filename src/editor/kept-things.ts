/** What a journal names, kept from the last check, so that it is found in milliseconds and offline. */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { readKept, writeKept } from '../disk/kept.ts';
import type { JournalRecord } from '../journal/record.ts';
import { type LoadedSources, type Stamp, stampSources } from '../load/load.ts';
import { type Thing, thingsOf } from './things.ts';

/**
 * @param folder the absolute path of the journal
 * @param cache the cache folder
 * @returns null when nothing is kept, or when a file has changed since
 * @throws the error of the file system when the folder cannot be listed
 */
export function keptThings(folder: string, cache: string): readonly Thing[] | null {
  return (readKept(keptIn(folder, cache), whatIs(stampSources(folder))) as readonly Thing[] | undefined) ?? null;
}

/**
 * Keeps what has been compiled. A cache that cannot be written costs only time.
 *
 * @param record as it stands on the day of its newest note
 */
export function keepThings({ folder, files }: LoadedSources, record: JournalRecord, cache: string): readonly Thing[] {
  const things = thingsOf(record);
  try {
    writeKept(keptIn(folder, cache), whatIs(files), things);
  } catch {
    // Found again next time.
  }
  return things;
}

const keptIn = (folder: string, cache: string): string => join(cache, 'things', `${digestOf(folder).slice(0, 16)}.json`);

/** Raise the number when things are told otherwise. */
function whatIs(stamps: readonly Stamp[]): string {
  return `things 1 ${digestOf(stamps.map(({ path, size, mtimeMs }) => `${path}\0${size}\0${mtimeMs}`).join('\n'))}`;
}

const digestOf = (text: string): string => createHash('sha256').update(text).digest('hex');
