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
  const { picture, orientation } = await openPicture(bytes, kind, Math.max(size.width, size.height), decoder);
  const turn = TURNS[orientation];
  const [width, height] = turn?.angle === 90 || turn?.angle === 270 ? [size.height, size.width] : [size.width, size.height];
  const small = await pixelsOf(picture.resize(width, height, { fit: 'fill' }).flatten({ background: PAPER_WHITE }).toColourspace('srgb'));
  return turn ? await turned(small, turn) : small;
}

async function pixelsOf(picture: Sharp): Promise<Pixels> {
  const { data, info } = await picture.raw({ depth: 'uchar' }).toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height, channels: info.channels };
}

/** Mirrored top to bottom or left to right, then turned clockwise: sharp keeps that order, whatever is asked first. */
interface Turn {
  readonly angle: 0 | 90 | 180 | 270;
  readonly flip?: boolean;
  readonly flop?: boolean;
}

/** What sets a picture upright, by what EXIF 2.3 says of it (tag 0x0112). Whatever is not here is upright. */
const TURNS: Readonly<Record<number, Turn>> = {
  2: { angle: 0, flop: true },
  3: { angle: 180 },
  4: { angle: 0, flip: true },
  5: { angle: 90, flip: true },
  6: { angle: 90 },
  7: { angle: 90, flop: true },
  8: { angle: 270 },
};

/** A picture is turned when it is small: turning every pixel of a camera takes as long as all the rest. */
async function turned({ data, width, height, channels }: Pixels, { angle, flip = false, flop = false }: Turn): Promise<Pixels> {
  return pixelsOf(sharp(data, { raw: { width, height, channels } }).rotate(angle).flip(flip).flop(flop));
}

interface Opened {
  readonly picture: Sharp;
  /** As in EXIF; 1 for a picture that is upright already. */
  readonly orientation: number;
}

async function openPicture(bytes: Buffer, kind: FileKind, edge: number, decoder: Decoder): Promise<Opened> {
  if (kind === 'pdf') return upright(fromRaw(await decoder.drawPdf(bytes, edge)));
  const { icc, orientation = 1 } = await opened(bytes).metadata();
  if (kind !== 'heic' && kind !== 'avif') return { picture: opened(bytes), orientation };
  const profile = icc ?? (colourPrimaries(bytes) === DISPLAY_P3 ? await displayP3() : null);
  if (kind === 'avif') {
    const picture = opened(bytes).autoOrient();
    // sharp uses a profile that it reads itself.
    return upright(profile && !icc ? await withProfile(picture, edge, profile) : picture);
  }
  const raw = fromRaw(await decoder.heic(bytes));
  return upright(profile ? await withProfile(raw, edge, profile) : raw);
}

const upright = (picture: Sharp): Opened => ({ picture, orientation: 1 });

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
