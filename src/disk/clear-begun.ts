import { existsSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { removeLeftOvers } from './write-whole.ts';

/**
 * Takes away what stopped processes had begun in some folders, and in the folders in them. Where the disk takes no writing it
 * stays, and nothing reads it.
 *
 * @param places need not exist
 */
export function clearBegun(places: readonly string[]): void {
  const there = places.filter((place) => existsSync(place));
  const inside = there.flatMap((place) => readdirSync(place, { withFileTypes: true }).filter((entry) => entry.isDirectory()));
  for (const place of [...there, ...inside.map(({ parentPath, name }) => join(parentPath, name))]) {
    try {
      removeLeftOvers(place);
    } catch {
      return;
    }
  }
}
