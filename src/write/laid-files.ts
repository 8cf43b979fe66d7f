/** Pictures and papers that a device sends: they wait by their draft, under the names that the note will have for them. */
import { createWriteStream, existsSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { open, stat } from 'node:fs/promises';
import { basename, join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { makeFolder } from '../disk/folders.ts';
import { removeLeftOvers, unfinishedBeside } from '../disk/write-whole.ts';
import { nearestId } from '../journal/schema/fields.ts';
import type { FileKind } from '../photos/facts.ts';
import { SIGNATURE_BYTES, signatureOf } from '../photos/file-signature.ts';
import { digestOf, inspectFile } from '../photos/inspect-file.ts';
import type { LaidFile } from './make-note.ts';

/** More than any phone takes at once, in bytes. */
export const LARGEST_FILE = 64 * 1024 * 1024;

const ENDINGS: Readonly<Record<FileKind, string>> = {
  jpeg: '.jpg',
  png: '.png',
  webp: '.webp',
  tiff: '.tif',
  avif: '.avif',
  heic: '.heic',
  pdf: '.pdf',
};

/** A file that is not taken, and why. */
export class NotTaken extends Error {}

export interface Incoming {
  readonly what: LaidFile['what'];
  /** As the device calls it. */
  readonly name: string;
  /** How many bytes the device says there are. */
  readonly bytes: number;
  readonly body: ReadableStream<Uint8Array>;
  /** Names that are taken where the file will lie. */
  readonly taken: (name: string) => boolean;
}

/**
 * Takes a file in. It is looked at as a build would look at it, and kept as it came, with its time, and not turned.
 *
 * @param folder of the draft
 * @returns its name; of a file that was sent before, the name it has
 * @throws NotTaken; the file system's error; and then nothing of it is left
 */
export async function layIn(folder: string, incoming: Incoming): Promise<LaidFile> {
  if (incoming.bytes > LARGEST_FILE) throw new NotTaken(`It has more than ${LARGEST_FILE / 1024 / 1024} MB.`);
  const into = join(folder, incoming.what);
  makeFolder(into);
  removeLeftOvers(into);
  const unfinished = unfinishedBeside(join(into, 'file'));
  try {
    await pipeline(Readable.fromWeb(incoming.body as never), counted(incoming.bytes), createWriteStream(unfinished, { flags: 'wx' }));
    if ((await stat(unfinished)).size !== incoming.bytes) throw new NotTaken('It did not come as a whole; send it again.');
    const ending = ENDINGS[await kindOf(unfinished, incoming.what)];
    const { problem } = await inspectFile(`file${ending}`, unfinished);
    if (problem !== null) throw new NotTaken(`It ${problem.message}. ${problem.hint}`);
    const before = await sameAs(into, unfinished);
    if (before !== null) return laid(into, before, incoming.what);
    const name = freeName(into, incoming.name, ending, incoming.taken);
    renameSync(unfinished, join(into, name));
    return laid(into, name, incoming.what);
  } finally {
    rmSync(unfinished, { force: true });
  }
}

/** What waits by a draft. */
export function laidBy(folder: string): LaidFile[] {
  return (['picture', 'paper'] as const).flatMap((what) => {
    const into = join(folder, what);
    return namesIn(into).map((name) => laid(into, name, what));
  });
}

function laid(into: string, name: string, what: LaidFile['what']): LaidFile {
  return { name, what, file: join(into, name) };
}

function namesIn(folder: string): string[] {
  return existsSync(folder) ? readdirSync(folder).filter((name) => /^[a-z0-9]/.test(name) && !name.startsWith('unfinished-')) : [];
}

/** Stops what sends more than it said. */
function counted(most: number) {
  return async function* (chunks: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
    let bytes = 0;
    for await (const chunk of chunks) {
      bytes += chunk.length;
      if (bytes > most) throw new NotTaken('It is larger than was said.');
      yield chunk;
    }
  };
}

async function kindOf(file: string, what: LaidFile['what']): Promise<FileKind> {
  const handle = await open(file);
  try {
    const { buffer, bytesRead } = await handle.read(Buffer.alloc(SIGNATURE_BYTES), 0, SIGNATURE_BYTES, 0);
    const { kind, name } = signatureOf(buffer.subarray(0, bytesRead));
    if (kind === null || (kind === 'pdf' && what === 'picture')) {
      throw new NotTaken(
        `${name === null ? 'It is no picture' : `It is ${name}`}; JPEG, PNG, WebP, TIFF, AVIF and HEIC are taken${what === 'paper' ? ', and PDF' : ''}.`,
      );
    }
    return kind;
  } finally {
    await handle.close();
  }
}

async function sameAs(into: string, file: string): Promise<string | null> {
  const digest = await digestOf(file);
  for (const name of namesIn(into)) if ((await digestOf(join(into, name))) === digest) return name;
  return null;
}

function freeName(into: string, given: string, ending: string, taken: (name: string) => boolean): string {
  const stem =
    nearestId(basename(given).replace(/\.[^.]*$/, ''))
      ?.slice(0, 40)
      .replace(/-$/, '') ?? 'picture';
  let name = `${stem}${ending}`;
  for (let n = 2; taken(name) || existsSync(join(into, name)); n += 1) name = `${stem}-${n}${ending}`;
  return name;
}
