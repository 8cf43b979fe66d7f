/**
 * The same outputs by nothing but sharp: every size and format straight from the file, one picture a core in
 * flight, no cache, no checks: `ROOT SITE`.
 */
import { mkdirSync, readdirSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { FALLBACK_SIZE, JPEG, LARGE_EDGES, NARROW_WIDTHS, WEBP } from '../../../src/photos/recipe.ts';

const [root = '', site = ''] = process.argv.slice(2);
mkdirSync(site, { recursive: true });
const files = readdirSync(root).values();

await Promise.all(
  Array.from({ length: availableParallelism() }, async () => {
    for (const name of files) {
      const sizes = [...NARROW_WIDTHS.map((width) => sized(name, width, null)), ...LARGE_EDGES.map((edge) => sized(name, edge, edge))];
      for (const [n, picture] of sizes.entries()) await picture.webp(WEBP).toFile(join(site, `${name}-${n}.webp`));
      await sized(name, FALLBACK_SIZE, FALLBACK_SIZE)
        .jpeg(JPEG)
        .toFile(join(site, `${name}-${FALLBACK_SIZE}.jpg`));
    }
  }),
);

function sized(name: string, width: number, height: number | null): Sharp {
  return sharp(join(root, name)).autoOrient().resize(width, height, { fit: 'inside', withoutEnlargement: true });
}
