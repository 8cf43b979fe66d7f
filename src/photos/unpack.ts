/** The one decoding of a picture: from its bytes to upright sRGB pixels of the largest size wanted. */
import { crc32, deflateSync } from 'node:zlib';
import { colourPrimaries, DISPLAY_P3 } from './colour-primaries.ts';
import type { Decoder, RawPicture } from './decoder.ts';
import type { FileKind } from './facts.ts';
import { MOST_PIXELS, PAPER_WHITE } from './recipe.ts';
import { type Sharp, sharp } from './uncached-sharp.ts';

/** Eight-bit sRGB pixels without alpha. */
export interface Pixels {
  readonly data: Buffer;
  readonly width: number;
  readonly height: number;
  readonly channels: 1 | 2 | 3 | 4;
}

/**
 * @param bytes the whole file
 * @param kind what it is
 * @param size the upright size wanted, not larger than the picture
 * @returns pixels of exactly that size; metadata is left behind, and the colours are converted from the profile
 * @throws an `Error` when the pixels are damaged
 */
export async function unpack(bytes: Buffer, kind: FileKind, size: { width: number; height: number }, decoder: Decoder): Promise<Pixels> {
  const picture = await openPicture(bytes, kind, Math.max(size.width, size.height), decoder);
  const { data, info } = await picture
    .autoOrient()
    .resize(size.width, size.height, { fit: 'fill' })
    .flatten({ background: PAPER_WHITE })
    .toColourspace('srgb')
    .raw({ depth: 'uchar' })
    .toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height, channels: info.channels };
}

async function openPicture(bytes: Buffer, kind: FileKind, edge: number, decoder: Decoder): Promise<Sharp> {
  if (kind === 'pdf') return fromRaw(await decoder.drawPdf(bytes, edge));
  if (kind !== 'heic' && kind !== 'avif') return opened(bytes);
  const { icc } = await opened(bytes).metadata();
  const profile = icc ?? (colourPrimaries(bytes) === DISPLAY_P3 ? await displayP3() : null);
  // sharp uses a profile that it reads itself.
  if (kind === 'avif') return profile && !icc ? await withProfile(opened(bytes).autoOrient(), edge, profile) : opened(bytes);
  const raw = fromRaw(await decoder.heic(bytes));
  return profile ? await withProfile(raw, edge, profile) : raw;
}

function opened(bytes: Buffer): Sharp {
  return sharp(bytes, { failOn: 'error', limitInputPixels: MOST_PIXELS });
}

/** The profile that sharp would write for Display P3. */
async function displayP3(): Promise<Buffer | null> {
  const any = sharp({ create: { width: 1, height: 1, channels: 3, background: PAPER_WHITE } });
  const png = await any.withIccProfile('p3').png().toBuffer();
  return (await sharp(png).metadata()).icc ?? null;
}

function fromRaw({ data, width, height }: RawPicture): Sharp {
  return sharp(data, { raw: { width, height, channels: 4 }, limitInputPixels: MOST_PIXELS });
}

/**
 * Says which colour profile raw pixels are in. sharp can convert to a profile but not assign one, so the pixels
 * are put into an uncompressed PNG and the profile is set into that, as an iCCP chunk (PNG, 11.3.2.3).
 */
async function withProfile(pixels: Sharp, edge: number, profile: Buffer): Promise<Sharp> {
  const size = { width: edge, height: edge, fit: 'inside', withoutEnlargement: true } as const;
  const png = await pixels.resize(size).png({ compressionLevel: 0 }).toBuffer();
  const body = Buffer.concat([Buffer.from('iCCPcamera\0\0', 'latin1'), deflateSync(profile)]);
  const chunk = Buffer.concat([uint32(body.length - 4), body, uint32(crc32(body))]);
  const afterHeader = 8 + 25;
  return sharp(Buffer.concat([png.subarray(0, afterHeader), chunk, png.subarray(afterHeader)]), { failOn: 'error' });
}

function uint32(value: number): Buffer {
  const four = Buffer.alloc(4);
  four.writeUInt32BE(value);
  return four;
}
