/**
 * The bytes of pages, kept together: a pack is a file of many pages, each compressed, named by the digest of the whole. A
 * pack is written once and read as a whole, so one that was cut, changed or put in the place of another is told by its name.
 */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { isLeftOver, writeWhole } from '../../disk/write-whole.ts';

/** Where a page is kept. */
export interface Packed {
  readonly pack: string;
  readonly from: number;
  readonly length: number;
}

const ENDING = '.pack';

/** @returns the pack; null when it is not there or not as it was written */
export function readPack(folder: string, name: string): Buffer | null {
  try {
    const bytes = readFileSync(join(folder, name + ENDING));
    return nameOf(bytes) === name ? bytes : null;
  } catch {
    return null;
  }
}

/**
 * Writes a pack of pages.
 *
 * @returns where each lies, in the order given
 * @throws the file system's error
 */
export function writePack(folder: string, pages: readonly Uint8Array[]): readonly Packed[] {
  const bytes = Buffer.concat(pages);
  const pack = nameOf(bytes);
  writeWhole(join(folder, pack + ENDING), bytes);
  let from = 0;
  return pages.map(({ length }) => {
    const place = { pack, from, length };
    from += length;
    return place;
  });
}

/** Removes packs that are not among these, and what a killed run left. */
export function removePacksBut(folder: string, names: ReadonlySet<string>): void {
  for (const name of readdirSync(folder)) {
    const isOld = name.endsWith(ENDING) && !names.has(name.slice(0, -ENDING.length));
    if (isOld || isLeftOver(name)) rmSync(join(folder, name), { force: true });
  }
}

const nameOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex').slice(0, 40);
