/** What a check told, kept for as long as nothing changes that it follows from. */
import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { readKept, writeKept } from '../../disk/kept.ts';
import type { IsoDate } from '../../journal/model.ts';
import type { LoadedSources } from '../../load/load.ts';
import type { CheckedJournal } from '../check-journal.ts';
import { editionDigest } from '../edition-store.ts';

/** What can be told of a journal without its record. */
export type CheckTold = Pick<CheckedJournal, 'diagnostics' | 'repairs' | 'notes'>;

export interface CheckAsked {
  readonly today: IsoDate;
  readonly to: IsoDate | null;
  /** The cache folder. */
  readonly cache: string;
}

/** @returns null when nothing is kept, what is kept is not as it was written, or something has changed since */
export function keptCheck(sources: LoadedSources, asked: CheckAsked): CheckTold | null {
  return (readKept(fileOf(sources, asked), whatIs(sources, asked)) as CheckTold | undefined) ?? null;
}

/** A cache that cannot be written costs time and nothing else. */
export function keepCheck(sources: LoadedSources, asked: CheckAsked, { diagnostics, repairs, notes }: CheckTold): void {
  try {
    writeKept(fileOf(sources, asked), whatIs(sources, asked), { diagnostics, repairs, notes } satisfies CheckTold);
  } catch {
    // It is checked anew the next time.
  }
}

const fileOf = ({ folder }: LoadedSources, { cache }: CheckAsked): string =>
  join(cache, 'checks', `${createHash('sha256').update(folder).digest('hex').slice(0, 16)}.json`);

/** Every byte of the sources, what tells that other files have changed, the days, and the program. Raise the number when it is kept otherwise. */
function whatIs({ files, assets, problems }: LoadedSources, { today, to }: CheckAsked): string {
  const hash = createHash('sha256').update(JSON.stringify([editionDigest(), today, to, problems]));
  for (const { path, bytes } of files) hash.update(`\0${path}\0${bytes.length}\0`).update(bytes);
  for (const { path, size, mtimeMs } of assets) hash.update(`\0${path}\0${size}\0${mtimeMs}`);
  return `check 1 ${hash.digest('hex')}`;
}
