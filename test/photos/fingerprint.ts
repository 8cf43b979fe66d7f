/**
 * A picture's fingerprint: whether each of 8 × 8 fields is brighter than its neighbour to the right (a difference
 * hash), so that two renderings of one picture are near each other whatever their size and format.
 */
import sharp, { type Sharp } from 'sharp';

const ROWS = 8;

/** @returns 64 bits, row by row */
export async function fingerprint(picture: string | Buffer | Sharp): Promise<boolean[]> {
  const image = typeof picture === 'string' || Buffer.isBuffer(picture) ? sharp(picture) : picture;
  const grey = await image
    .resize(ROWS + 1, ROWS, { fit: 'fill' })
    .greyscale()
    .raw()
    .toBuffer();
  return Array.from({ length: ROWS * ROWS }, (_, index) => {
    const at = Math.floor(index / ROWS) * (ROWS + 1) + (index % ROWS);
    return (grey[at] ?? 0) > (grey[at + 1] ?? 0);
  });
}

/** How many of the 64 bits differ. */
export function distance(a: readonly boolean[], b: readonly boolean[]): number {
  return a.filter((bit, index) => bit !== b[index]).length;
}

/** The colour in the middle of a picture, as stored, whatever profile it carries. */
export async function middleOf(picture: string | Buffer): Promise<number[]> {
  const { data, info } = await sharp(picture, { ignoreIcc: true }).raw().toBuffer({ resolveWithObject: true });
  const at = (Math.floor(info.height / 2) * info.width + Math.floor(info.width / 2)) * info.channels;
  return [...data.subarray(at, at + 3)];
}
