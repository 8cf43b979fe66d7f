/** What a bag says of itself: its files, declaration and manifests, read and not yet believed (RFC 8493, section 2). */
import { getHashes } from 'node:crypto';
import { type Dirent, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type ManifestRead, readManifest, readTags, type Tag } from './manifest.ts';

/** Something that is not as the bag says. `path` is from the folder of the bag; '' is the bag as a whole. */
export interface BagProblem {
  readonly path: string;
  readonly what: string;
}

/** One manifest of the bag. */
export interface Manifest extends ManifestRead {
  readonly file: string;
  readonly algorithm: string;
  /** Of tag files, not of the payload. */
  readonly ofTags: boolean;
}

export interface Bag {
  readonly folder: string;
  /** Every file, from the folder of the bag. Links are not followed and are no files. */
  readonly files: readonly string[];
  readonly problems: BagProblem[];
}

const MANIFEST = /^(tag)?manifest-([a-z0-9]+)\.txt$/i;

/** Every file below, parts joined by `/`. What is no plain file is told: it could lead anywhere. */
export function filesBelow(folder: string, under: string, problems: BagProblem[]): string[] {
  let entries: Dirent[];
  try {
    entries = readdirSync(join(folder, under), { withFileTypes: true });
  } catch (error) {
    problems.push({ path: under, what: `cannot be looked into (${(error as { code?: string }).code ?? 'unknown'})` });
    return [];
  }
  return entries.flatMap((entry) => {
    const path = under === '' ? entry.name : `${under}/${entry.name}`;
    if (entry.isDirectory()) return filesBelow(folder, path, problems);
    if (entry.isFile()) return [path];
    problems.push({ path, what: 'is a link or a device, and is not followed' });
    return [];
  });
}

/** `bagit.txt`: two lines, in UTF-8 without a byte order mark (section 2.1.1). Without it there is no bag. */
export function declarationOf(bag: Bag): { version: string; encoding: string } | null {
  const refuse = (what: string) => {
    bag.problems.push({ path: 'bagit.txt', what });
    return null;
  };
  if (!bag.files.includes('bagit.txt')) return refuse('is missing: without it this is no bag');
  const bytes = readFileSync(join(bag.folder, 'bagit.txt'));
  if (bytes[0] === 0xef && bytes[1] === 0xbb) return refuse('begins with a byte order mark');
  const tags = readTags(bytes.toString('utf8'));
  const [version, encoding] = ['BagIt-Version', 'Tag-File-Character-Encoding'].map((name) => tagNamed(tags, name));
  if (version === undefined || encoding === undefined || tags.length !== 2)
    return refuse('does not say version and encoding, and nothing else');
  if (version !== '1.0' && version !== '0.97') return refuse(`speaks of version ${version}; 1.0 and 0.97 are known`);
  if (decoderOf(encoding) === null) return refuse(`names an encoding that is not known: ${encoding}`);
  return { version, encoding };
}

function decoderOf(encoding: string): TextDecoder | null {
  try {
    return new TextDecoder(encoding, { fatal: true });
  } catch {
    return null;
  }
}

export function textOf(bag: Bag, file: string, encoding: string): string {
  try {
    return decoderOf(encoding)?.decode(readFileSync(join(bag.folder, file))) ?? '';
  } catch {
    bag.problems.push({ path: file, what: `is not text in ${encoding}` });
    return '';
  }
}

export function tagNamed(tags: readonly Tag[], wanted: string): string | undefined {
  return tags.find(([name]) => name.toLowerCase() === wanted.toLowerCase())?.[1];
}

export function manifestsOf(bag: Bag, encoding: string): Manifest[] {
  const found = bag.files.flatMap((file): Manifest[] => {
    const [, tag, algorithm] = MANIFEST.exec(file) ?? [];
    if (algorithm === undefined) return [];
    const read = readManifest(textOf(bag, file, encoding));
    for (const n of read.odd) bag.problems.push({ path: file, what: `line ${n} is no sum and path` });
    return [{ ...read, file, algorithm: algorithm.toLowerCase(), ofTags: tag !== undefined }];
  });
  const payload = found.filter(({ ofTags }) => !ofTags);
  if (payload.length === 0) bag.problems.push({ path: '', what: 'has no manifest of what it holds' });
  const unknown = found.filter(({ algorithm }) => !isKnown(algorithm));
  for (const { file, algorithm } of unknown) bag.problems.push({ path: file, what: `sums by ${algorithm}, which cannot be reckoned here` });
  return found;
}

export function isKnown(algorithm: string): boolean {
  return getHashes().includes(algorithm);
}
