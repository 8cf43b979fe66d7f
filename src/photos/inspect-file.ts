/** Looks at one picture or paper: its kind, size and camera facts, and whether it can be used. No pixel is unpacked. */
import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { type FileHandle, open } from 'node:fs/promises';
import { LARGEST_PDF } from './clean-pdf.ts';
import { isCutShort } from './cut-short.ts';
import { type Decoder, withDecoder } from './decoder.ts';
import { type FileKind, kindByName, type PictureFacts } from './facts.ts';
import { nameOfKind, SIGNATURE_BYTES, signatureOf } from './file-signature.ts';
import { type CameraFacts, NO_CAMERA_FACTS, readCameraFacts } from './metadata.ts';
import { MOST_PIXELS } from './recipe.ts';
import { type Metadata, sharp } from './uncached-sharp.ts';

/** Either what is known of a file, or why it cannot be used, in words that go on from its name. */
export type Finding =
  | { readonly facts: PictureFacts; readonly problem: null }
  | { readonly facts: null; readonly problem: { readonly message: string; readonly hint: string } };

/** In bytes: what can be taken into memory as one. */
const LARGEST_PICTURE = 2 * 1024 ** 3 - 1;

/** A TIFF keeps its camera facts anywhere; in one larger than this they are not looked for. */
const LARGEST_TIFF = 256 * 1024 * 1024;

/**
 * @param path inside the journal; its ending says which kind it should be
 * @param file where it lies
 * @param decoder of whoever looks at many; else one is opened for a PDF
 * @returns facts without a digest, or the problem; never throws over what is in the file
 * @throws the file system's error when the file cannot be opened or read
 */
export async function inspectFile(path: string, file: string, decoder: Decoder | null = null): Promise<Finding> {
  const promised = kindByName(path);
  if (promised === null) return unusable('has an ending that no picture has', 'Name it by what it is, for instance .jpg.');
  const handle = await open(file);
  try {
    const { size } = await handle.stat();
    if (size === 0) return unusable('is empty', 'Copy it from the camera again.');
    if (promised !== 'pdf' && size > LARGEST_PICTURE) {
      return unusable(`has ${(size / 1024 ** 3).toFixed(1)} GB; the limit is 2`, 'Scale it down, or cut it into pieces.');
    }
    const lie = await lieAbout(handle, promised);
    if (lie !== null) return lie;
    if (await isCutShort(handle, promised, size)) return unusable('is cut short: its end is missing', 'Copy it from the camera again.');
    if (promised !== 'pdf') return await pictureFacts(path, file, promised, size);
    return { facts: await pdfFacts(path, handle, size, decoder), problem: null };
  } finally {
    await handle.close();
  }
}

/** SHA-256 of a file, hexadecimal. */
export async function digestOf(file: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(file, { highWaterMark: 1 << 20 })) hash.update(chunk as Buffer);
  return hash.digest('hex');
}

export function unusable(message: string, hint: string): Finding {
  return { facts: null, problem: { message, hint } };
}

async function lieAbout(handle: FileHandle, promised: FileKind): Promise<Finding | null> {
  const { buffer, bytesRead } = await handle.read(Buffer.alloc(SIGNATURE_BYTES), 0, SIGNATURE_BYTES, 0);
  const is = signatureOf(buffer.subarray(0, bytesRead));
  if (is.kind === promised) return null;
  const what = is.name === null ? 'not a picture that can be read' : `really ${is.name}`;
  return unusable(
    `is named as ${nameOfKind(promised)} and is ${what}`,
    is.kind === null ? 'Save it again as JPEG or PNG.' : 'Give it the ending of what it is, here and in the notes.',
  );
}

async function pictureFacts(path: string, file: string, kind: FileKind, size: number): Promise<Finding> {
  const header = await headerOf(file);
  if (header === null) return unusable('cannot be understood: its header is damaged', 'Copy it from the camera again.');
  const { width, height } = header.autoOrient;
  if (width * height > MOST_PIXELS) {
    const has = Math.round((width * height) / 1e6);
    return unusable(`has ${has} megapixels; the limit is ${MOST_PIXELS / 1e6}`, 'Scale it down, or cut it into pieces.');
  }
  const camera = header.exif
    ? readCameraFacts(header.exif)
    : kind === 'tiff' && size <= LARGEST_TIFF
      ? await tiffFacts(file)
      : NO_CAMERA_FACTS;
  return { facts: { path, kind, bytes: size, digest: null, width, height, pages: null, seal: null, ...camera }, problem: null };
}

async function headerOf(file: string): Promise<Metadata | null> {
  try {
    return await sharp(file, { limitInputPixels: false }).metadata();
  } catch {
    return null;
  }
}

async function tiffFacts(file: string): Promise<CameraFacts> {
  const handle = await open(file);
  try {
    return readCameraFacts(await handle.readFile());
  } finally {
    await handle.close();
  }
}

async function pdfFacts(path: string, handle: FileHandle, bytes: number, decoder: Decoder | null): Promise<PictureFacts> {
  const seal = bytes > LARGEST_PDF ? 'large' : await sealWith(decoder, (await handle.read(Buffer.alloc(bytes), 0, bytes, 0)).buffer);
  return { path, kind: 'pdf', bytes, digest: null, width: 0, height: 0, pages: null, takenAt: null, camera: null, seal };
}

const sealWith = (decoder: Decoder | null, bytes: Uint8Array): Promise<PictureFacts['seal']> =>
  decoder === null ? withDecoder((own) => own.sealOf(bytes)) : decoder.sealOf(bytes);
