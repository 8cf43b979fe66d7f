/** Files → a bag (RFC 8493, BagIt 1.0): a folder, or one ZIP file. The same files give the same bytes. */
import { createHash, type Hash } from 'node:crypto';
import { createReadStream, createWriteStream, mkdirSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { PassThrough, Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { ZipFile } from 'yazl';
import { type ManifestLine, manifestText, type Tag, tagsText } from './manifest.ts';

/** Something to put into a bag: a file on disk, or bytes. */
export interface BagFile {
  /** Below `data/`, parts joined by `/`. */
  readonly path: string;
  readonly from: string | Uint8Array;
}

/** Where the files of a bag go, one after the other. */
export interface BagSink {
  /** Takes the bytes of one file, to their end. */
  add(path: string, content: Readable): Promise<void>;
  end(): Promise<void>;
}

export interface BagFacts {
  /** ISO 8601: the day that `Bagging-Date` names. */
  readonly day: string;
  readonly about: readonly Tag[];
}

const DECLARATION: readonly Tag[] = [
  ['BagIt-Version', '1.0'],
  ['Tag-File-Character-Encoding', 'UTF-8'],
];

/**
 * Writes a bag: payload, tag files, manifests of both by SHA-512.
 *
 * @param files in any order; paths are unique
 * @param progress is told how many files are in, after each
 * @returns what went in: octets and streams of the payload
 */
export async function writeBag(
  files: readonly BagFile[],
  facts: BagFacts,
  sink: BagSink,
  progress: (done: number) => void = () => undefined,
): Promise<{ octets: number; streams: number }> {
  const payload: ManifestLine[] = [];
  let octets = 0;
  for (const { path, from } of [...files].sort((a, b) => (a.path < b.path ? -1 : 1))) {
    const written = await put(sink, `data/${path}`, from);
    octets += written.octets;
    payload.push({ path: `data/${path}`, digest: written.digest });
    progress(payload.length);
  }
  const oxum = `${octets}.${payload.length}`;
  const about: readonly Tag[] = [...facts.about, ['Bagging-Date', facts.day], ['Payload-Oxum', oxum]];
  const tags: ManifestLine[] = [];
  for (const [path, text] of [
    ['bag-info.txt', tagsText(about)],
    ['bagit.txt', tagsText(DECLARATION)],
    ['manifest-sha512.txt', manifestText(payload)],
  ] as const) {
    tags.push({ path, digest: (await put(sink, path, Buffer.from(text))).digest });
  }
  await put(sink, 'tagmanifest-sha512.txt', Buffer.from(manifestText(tags)));
  await sink.end();
  return { octets, streams: payload.length };
}

async function put(sink: BagSink, path: string, from: string | Uint8Array): Promise<{ digest: string; octets: number }> {
  const hash = createHash('sha512');
  const counted = { octets: 0 };
  const source = typeof from === 'string' ? createReadStream(from) : Readable.from([Buffer.from(from)], { objectMode: false });
  const watched = source.pipe(watching(hash, counted));
  source.on('error', (error: Error) => watched.destroy(error));
  await sink.add(path, watched);
  return { digest: hash.digest('hex'), octets: counted.octets };
}

/** Lets bytes through and takes note of them: what the manifest says is what was written, even of a file that changes meanwhile. */
function watching(hash: Hash, counted: { octets: number }): PassThrough {
  const through = new PassThrough();
  through.on('data', (bytes: Uint8Array) => {
    hash.update(bytes);
    counted.octets += bytes.length;
  });
  through.pause();
  return through;
}

/** A bag as a folder, which must be empty or not there. */
export function folderSink(folder: string): BagSink {
  return {
    add: async (path, content) => {
      const file = join(folder, path);
      mkdirSync(dirname(file), { recursive: true });
      await pipeline(content, createWriteStream(file, { flags: 'wx' }));
    },
    end: async () => undefined,
  };
}

/**
 * A bag as one ZIP file. Entries carry the day given and no owner, so that the bytes depend on the content alone.
 *
 * @param root the folder that everything in it lies in: a bag is unpacked to one folder (RFC 8493, section 4.2)
 */
export function zipSink(file: string, root: string, day: string): BagSink {
  const zip = new ZipFile();
  const written = pipeline(zip.outputStream, createWriteStream(file, { flags: 'wx' }));
  written.catch(() => undefined);
  const mtime = new Date(`${day}T12:00:00`);
  return {
    add: (path, content) =>
      new Promise<void>((done, failed) => {
        content.on('end', done);
        content.on('error', (error: Error) => failed(error));
        written.catch(failed);
        zip.addReadStream(content, `${root}/${path}`, { mtime, mode: 0o100644, forceDosTimestamp: true });
      }),
    end: async () => {
      zip.end();
      await written;
    },
  };
}
