/**
 * What was found in each file of a journal, so that a file that has not changed is not opened again. It lies in
 * the cache folder, one file a journal; losing it costs time and nothing else.
 */
import { createHash } from 'node:crypto';
import { existsSync, realpathSync, type Stats } from 'node:fs';
import { join } from 'node:path';
import { readKept, writeKept } from '../disk/kept.ts';
import type { Finding } from './inspect-file.ts';
import { MOST_PIXELS } from './recipe.ts';

/** Raise the number when a file would be found out differently. */
const EDITION = `pictures 5:${MOST_PIXELS}`;
/** A file that changed so recently may change again without its times telling (clocks of file systems are coarse). */
const TOO_FRESH_MS = 50;

type Stamp = Pick<Stats, 'size' | 'mtimeMs' | 'ctimeMs'>;
type Row = readonly [size: number, mtimeMs: number, ctimeMs: number, finding: Finding];

export interface PictureIndex {
  /** What was found when the file had this stamp; null when it is not known. */
  known(path: string, stamp: Stamp): Finding | null;
  /** `seen` is when the file began to be read, in milliseconds since 1970. */
  remember(path: string, stamp: Stamp, finding: Finding, seen: number): void;
  /** Writes the index, without files that are gone; does nothing when nothing was remembered. */
  save(): void;
}

/**
 * @param cache the cache folder
 * @param root the journal folder
 */
export function openIndex(cache: string, root: string): PictureIndex {
  const file = join(cache, 'pictures', `index-${createHash('sha256').update(realpathSync(root)).digest('hex').slice(0, 16)}.json`);
  const rows = read(file);
  let changed = false;
  return {
    known(path, stamp) {
      const row = rows.get(path);
      return row && row[0] === stamp.size && row[1] === stamp.mtimeMs && row[2] === stamp.ctimeMs ? row[3] : null;
    },
    remember(path, stamp, finding, seen) {
      if (seen - Math.max(stamp.ctimeMs, stamp.mtimeMs) < TOO_FRESH_MS) return;
      rows.set(path, [stamp.size, stamp.mtimeMs, stamp.ctimeMs, finding]);
      changed = true;
    },
    save() {
      if (!changed) return;
      const there = [...rows].filter(([path]) => existsSync(join(root, path)));
      writeKept(file, EDITION, there);
      changed = false;
    },
  };
}

/** An index that cannot be read, or is of another edition, is an empty one. */
function read(file: string): Map<string, Row> {
  return new Map(readKept(file, EDITION) as [string, Row][] | undefined);
}
