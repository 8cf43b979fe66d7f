/** Holds a bag against its manifests, by the rules of RFC 8493 (BagIt 1.0; 0.97 is read too). Nothing in the bag is changed. */
import { createHash } from 'node:crypto';
import { createReadStream, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pipeline } from 'node:stream/promises';
import { readTags } from './manifest.ts';
import { type Bag, type BagProblem, declarationOf, filesBelow, isKnown, type Manifest, manifestsOf, tagNamed, textOf } from './read-bag.ts';

export interface BagVerdict {
  readonly problems: readonly BagProblem[];
  /** Files whose sums were reckoned, each once. */
  readonly files: number;
  readonly octets: number;
  /** Sums that were held against the files, by their names in the manifests. */
  readonly algorithms: readonly string[];
}

/**
 * @param folder the folder that holds `bagit.txt`
 * @param progress is told each file before it is read
 */
export async function verifyBag(folder: string, progress: (path: string) => void = () => undefined): Promise<BagVerdict> {
  const problems: BagProblem[] = [];
  const files = filesBelow(folder, '', problems);
  const bag: Bag = { folder, files, problems };
  const declared = declarationOf(bag);
  if (declared === null) return { problems, files: 0, octets: 0, algorithms: [] };
  const manifests = manifestsOf(bag, declared.encoding);
  checkLists(bag, manifests, declared.version);
  const known = manifests.filter(({ algorithm }) => isKnown(algorithm));
  const sums = await sumsOf(bag, known, progress);
  const octets = [...sums].reduce((sum, [path, of]) => sum + (path.startsWith('data/') ? of.octets : 0), 0);
  checkOxum(bag, declared.encoding, sums);
  return { problems, files: sums.size, octets, algorithms: [...new Set(known.map(({ algorithm }) => algorithm))] };
}

/** What the manifests list against what is there: missing, too many, out of bounds, twice, in one manifest and not in another. */
function checkLists(bag: Bag, manifests: readonly Manifest[], version: string): void {
  const there = new Set(bag.files);
  const toFetch = fetchedLater(bag, there);
  const missing = new Set<string>();
  for (const manifest of manifests) {
    const seen = new Set<string>();
    for (const { path } of manifest.lines) {
      if (seen.has(path)) bag.problems.push({ path: manifest.file, what: `lists ${path} twice` });
      seen.add(path);
      const out = outOfBounds(path, manifest);
      if (out !== null) bag.problems.push({ path: manifest.file, what: out });
      else if (!there.has(path) && !toFetch.has(path)) missing.add(path);
    }
  }
  for (const path of missing) bag.problems.push({ path, what: missingWords(path, bag.files) });
  const payload = manifests.filter(({ ofTags }) => !ofTags);
  const listed = payload.map(({ lines }) => new Set(lines.map(({ path }) => path)));
  for (const path of bag.files.filter((file) => file.startsWith('data/'))) {
    const without = payload.filter((_, n) => !listed[n]?.has(path));
    if (without.length === payload.length) bag.problems.push({ path, what: 'is too many: no manifest lists it' });
    else if (without.length > 0 && version !== '0.97') {
      bag.problems.push({ path, what: `is not in ${without.map(({ file }) => file).join(', ')}: every manifest lists the same files` });
    }
  }
}

/** A path may lead nowhere but into the bag (section 5.1), and a manifest lists what it is for. */
function outOfBounds(path: string, { ofTags }: Manifest): string | null {
  const parts = path.split('/');
  const climbs =
    path.startsWith('/') ||
    path.startsWith('~') ||
    /^[A-Za-z]:/.test(path) ||
    parts.includes('..') ||
    path.includes('\\') ||
    path.includes('\0');
  if (climbs) return `lists ${path}, which leads out of the bag`;
  if (!ofTags && !path.startsWith('data/')) return `lists ${path}, which is not below data/`;
  if (ofTags && path.startsWith('data/')) return `lists ${path}, which is payload`;
  if (ofTags && /^tagmanifest-/i.test(path)) return `lists ${path}: a manifest of tag files lists none of its own kind`;
  return null;
}

/** A name in another Unicode form is another name to some disks and the same to others. */
function missingWords(path: string, files: readonly string[]): string {
  const same = files.find((file) => file.normalize('NFC') === path.normalize('NFC'));
  return same === undefined ? 'is missing' : 'is missing; a file whose name differs only in how its accents are coded is there';
}

/** `fetch.txt`: files that lie elsewhere and belong here. They are not fetched: until they are here the bag is not complete. */
function fetchedLater(bag: Bag, there: ReadonlySet<string>): ReadonlySet<string> {
  const later = new Set<string>();
  if (!there.has('fetch.txt')) return later;
  for (const [n, line] of readFileSync(join(bag.folder, 'fetch.txt'), 'utf8')
    .split(/\r\n|\r|\n/)
    .entries()) {
    if (line.trim() === '') continue;
    const path = /^\S+[ \t]+(?:\d+|-)[ \t]+(.+)$/.exec(line)?.[1];
    if (path === undefined || !path.startsWith('data/') || path.split('/').includes('..')) {
      bag.problems.push({ path: 'fetch.txt', what: `line ${n + 1} is no address, length and path below data/` });
    } else if (!there.has(path)) {
      later.add(path);
      bag.problems.push({ path, what: 'lies elsewhere still: fetch.txt says where from' });
    }
  }
  return later;
}

interface Sums {
  readonly octets: number;
  readonly by: ReadonlyMap<string, string>;
}

/** Reads each listed file once, for all manifests. */
async function sumsOf(bag: Bag, manifests: readonly Manifest[], progress: (path: string) => void): Promise<ReadonlyMap<string, Sums>> {
  const there = new Set(bag.files);
  const wanted = new Map<string, Set<string>>();
  for (const { lines, algorithm } of manifests) {
    for (const { path } of lines) if (there.has(path)) wanted.set(path, (wanted.get(path) ?? new Set()).add(algorithm));
  }
  const sums = new Map<string, Sums>();
  for (const [path, algorithms] of wanted) {
    progress(path);
    const read = await readSums(join(bag.folder, path), algorithms).catch(() => null);
    if (read === null) bag.problems.push({ path, what: 'cannot be read' });
    else sums.set(path, read);
  }
  const differing = new Map<string, string[]>();
  for (const { lines, algorithm } of manifests) {
    for (const { path, digest } of lines) {
      const sum = sums.get(path)?.by.get(algorithm);
      if (sum !== undefined && sum !== digest) differing.set(path, [...(differing.get(path) ?? []), algorithm]);
    }
  }
  for (const [path, by] of differing) bag.problems.push({ path, what: `differs from its sum (${by.join(', ')})` });
  return sums;
}

async function readSums(file: string, algorithms: ReadonlySet<string>): Promise<Sums> {
  const hashes = [...algorithms].map((name) => [name, createHash(name)] as const);
  let octets = 0;
  await pipeline(createReadStream(file), async (source: AsyncIterable<Uint8Array>) => {
    for await (const bytes of source) {
      octets += bytes.length;
      for (const [, hash] of hashes) hash.update(bytes);
    }
  });
  return { octets, by: new Map(hashes.map(([name, hash]) => [name, hash.digest('hex')])) };
}

/** `Payload-Oxum: octets.streams` of bag-info.txt against what is there (section 2.2.2). */
function checkOxum(bag: Bag, encoding: string, sums: ReadonlyMap<string, Sums>): void {
  if (!bag.files.includes('bag-info.txt')) return;
  const said = tagNamed(readTags(textOf(bag, 'bag-info.txt', encoding)), 'Payload-Oxum');
  if (said === undefined) return;
  const payload = bag.files.filter((file) => file.startsWith('data/'));
  const octets = payload.reduce((sum, file) => sum + (sums.get(file)?.octets ?? 0), 0);
  const unread = payload.some((file) => !sums.has(file));
  const is = `${octets}.${payload.length}`;
  const streams = said.split('.')[1];
  if (unread ? streams !== String(payload.length) : said !== is) {
    bag.problems.push({
      path: 'bag-info.txt',
      what: `says Payload-Oxum ${said}; ${unread ? `${payload.length} ${payload.length === 1 ? 'file' : 'files'}` : is} ${payload.length === 1 ? 'is' : 'are'} there`,
    });
  }
}
