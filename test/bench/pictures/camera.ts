/**
 * Takes pictures of nothing: soft shapes with grain, so that they weigh about what a camera's do. The same seed
 * gives the same bytes. `FOLDER COUNT MEGAPIXELS SEED TAKEN`; every third is held upright, by its EXIF orientation. Of many
 * only so many are really taken, 48 where it is not said, and the others are the same again, told apart by a comment in the
 * file.
 */
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import sharp from 'sharp';
import { type Random, randomFrom } from '../random.ts';
import { remarked } from './remarked.ts';

/** Sides of the noise that stands for detail; it is laid over the picture like tiles. */
const TILE = 256;
/** Sides of the soft shapes under it. */
const SHAPES = { width: 24, height: 18 };

const [folder = '', count = '0', megapixels = '12', seed = '1', most = '48'] = process.argv.slice(2);
const TAKEN = Number(most);
const random = randomFrom(Number(seed));
const grain = { input: noise(random, TILE, TILE, 96, 160), raw: { width: TILE, height: TILE, channels: 3 as const } };
const height = Math.round(Math.sqrt((Number(megapixels) * 1e6 * 3) / 4));
const width = Math.round((height * 4) / 3);

await mkdir(folder, { recursive: true });
const taken: Buffer[] = [];
for (let n = 0; n < Number(count); n += 1) {
  const picture = n < TAKEN ? await take(n) : remarked(taken[n % TAKEN] as Buffer, String(n));
  if (n < TAKEN) taken.push(picture);
  await writeFile(join(folder, `${String(n).padStart(4, '0')}.jpg`), picture);
}

function take(n: number): Promise<Buffer> {
  const shapes = noise(random, SHAPES.width, SHAPES.height, 20, 235);
  return sharp(shapes, { raw: { ...SHAPES, channels: 3 } })
    .resize(width, height, { fit: 'fill', kernel: 'cubic' })
    .composite([{ ...grain, tile: true, blend: 'overlay' }])
    .withMetadata({ orientation: n % 3 === 0 ? 6 : 1 })
    .jpeg({ quality: 92 })
    .toBuffer();
}

function noise(random: Random, width: number, height: number, low: number, high: number): Buffer {
  const data = Buffer.alloc(width * height * 3);
  for (let at = 0; at < data.length; at += 1) data[at] = random.between(low, high);
  return data;
}
