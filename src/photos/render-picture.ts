/** Renders one picture into a folder: every size and format of the recipe from one decoding. */
import { createHash } from 'node:crypto';
import { readFile, writeFile } from 'node:fs/promises';
import { basename, join } from 'node:path';
import type { EntryFacts } from '../disk/entry-cache.ts';
import type { Decoder } from './decoder.ts';
import { kindByName } from './facts.ts';
import type { RenderedFile, Rendition } from './plan.ts';
import { keyOf } from './plan-pictures.ts';
import { JPEG, WEBP } from './recipe.ts';
import { type Sharp, sharp } from './uncached-sharp.ts';
import { type Pixels, unpack } from './unpack.ts';

/** A picture cannot be rendered, and why: `message` goes on from its name. Faults of the disk are other errors. */
export class CannotRender extends Error {
  readonly hint: string;
  constructor(message: string, hint: string) {
    super(message);
    this.hint = hint;
  }
}

/** The files of a rendition, widest first, without their folder. */
export function namesOf(rendition: Rendition): string[] {
  return filesOf(rendition).map((one) => basename(one.file));
}

/** Every file of a rendition, widest first; a JPEG before a WebP of the same width. */
export function filesOf(rendition: Rendition): RenderedFile[] {
  return [rendition.fallback, ...rendition.sources.flatMap((source) => source.srcset)].sort((a, b) => b.width - a.width);
}

/**
 * @param rendition what to make
 * @param file where the picture lies
 * @param folder where the files go, by their base names
 * @throws `CannotRender` when its bytes are not those of the plan, or cannot be unpacked; the file system's error
 */
export async function renderPicture(rendition: Rendition, file: string, folder: string, decoder: Decoder): Promise<EntryFacts> {
  const bytes = await readUnchanged(file, rendition.key);
  let pixels = await unpack(bytes, kindByName(rendition.path) ?? 'jpeg', rendition.full, decoder).catch(cannotUnpack);
  for (const wanted of filesOf(rendition)) {
    if (wanted.width !== pixels.width || wanted.height !== pixels.height) pixels = await scaled(pixels, wanted.width, wanted.height);
    // What the disk says of a write of sharp's own is no error of the file system.
    await writeFile(join(folder, basename(wanted.file)), await encoded(fromPixels(pixels), wanted.file).toBuffer());
  }
  return { colour: await meanColour(pixels) };
}

/** What is put into the cache under a key must be made of the bytes that the key stands for. */
async function readUnchanged(file: string, key: string): Promise<Buffer> {
  const bytes = await readFile(file).catch((error: NodeJS.ErrnoException) => {
    throw new CannotRender(`cannot be read (${error.code ?? error.message})`, 'Check its permissions, and that it is still there.');
  });
  if (keyOf(createHash('sha256').update(bytes).digest('hex')) === key) return bytes;
  throw new CannotRender('changed while the site was being made', 'Make the site again.');
}

function cannotUnpack(error: unknown): never {
  const [line = ''] = (error instanceof Error ? error.message : String(error)).split('\n');
  throw new CannotRender(`cannot be unpacked: ${line.trim()}`, 'Copy it from the camera again.');
}

function encoded(image: Sharp, file: string): Sharp {
  return file.endsWith('.jpg') ? image.jpeg(JPEG) : image.webp(WEBP);
}

function fromPixels({ data, width, height, channels }: Pixels): Sharp {
  return sharp(data, { raw: { width, height, channels } });
}

async function scaled(pixels: Pixels, width: number, height: number): Promise<Pixels> {
  const { data, info } = await fromPixels(pixels).resize(width, height, { fit: 'fill' }).raw().toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height, channels: info.channels };
}

/** Mean over all pixels, in sRGB values: near enough for the moment before the picture is there. */
async function meanColour(pixels: Pixels): Promise<string> {
  const { channels } = await fromPixels(pixels).stats();
  const [red, green = red, blue = red] = channels.map((one) => Math.round(one.mean));
  return `#${[red, green, blue].map((value) => (value ?? 0).toString(16).padStart(2, '0')).join('')}`;
}
