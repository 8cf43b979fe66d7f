/** Looks at every picture and paper of a journal, opening only what has changed since the index was written. */
import { readFile, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { type Decoder, withDecoder } from './decoder.ts';
import { kindByName, type PictureFacts } from './facts.ts';
import { eachOf } from './in-flight.ts';
import { digestOf, type Finding, inspectFile, unusable } from './inspect-file.ts';
import { openIndex } from './picture-index.ts';

/** Why a file cannot be used: `message` goes on from the file's name, `hint` says what to do. */
export interface PictureProblem {
  readonly path: string;
  readonly message: string;
  readonly hint: string;
}

export interface Inspection {
  /** By path; only what can be used. */
  readonly facts: ReadonlyMap<string, PictureFacts>;
  readonly problems: readonly PictureProblem[];
  /** How many files were opened; the others were known. */
  readonly opened: number;
}

export interface InspectOptions {
  /** The journal folder. */
  readonly root: string;
  /** The cache folder; it holds the index. */
  readonly cache: string;
  /** `header` is enough to check a journal; a build needs the digests too, and the pages of PDFs. */
  readonly depth: 'header' | 'full';
}

const FILES_AT_ONCE = 8;

/**
 * Inspects those of the paths that are pictures or PDFs by their names; others are passed over.
 *
 * @param paths inside the journal
 * @returns facts and problems in the order of the paths; no file stops the others from being looked at
 */
export async function inspectPictures(paths: readonly string[], options: InspectOptions): Promise<Inspection> {
  return withDecoder((decoder) => inspectWith(decoder, paths, options));
}

async function inspectWith(decoder: Decoder, paths: readonly string[], options: InspectOptions): Promise<Inspection> {
  const index = openIndex(options.cache, options.root);
  const pictures = paths.filter((path) => kindByName(path) !== null);
  let opened = 0;
  const look = async (path: string): Promise<Finding> => {
    const file = join(options.root, path);
    try {
      const stamp = await stat(file);
      const known = index.known(path, stamp);
      if (known && isEnough(known, options.depth)) return known;
      opened += 1;
      const seen = Date.now();
      const finding = await deepened(known ?? (await inspectFile(path, file, decoder)), file, options.depth, decoder);
      index.remember(path, stamp, finding, seen);
      return finding;
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code ?? String(error);
      return unusable(`cannot be read (${code})`, 'Check its permissions, and that it is still there.');
    }
  };
  const findings = await eachOf(pictures, FILES_AT_ONCE, look);
  index.save();
  return { ...sorted(pictures, findings), opened };
}

function isEnough(finding: Finding, depth: InspectOptions['depth']): boolean {
  return depth === 'header' || finding.facts === null || finding.facts.digest !== null;
}

/** Adds what only the whole file tells. A PDF that cannot be opened, with a password say, or is not to be, has no known pages. */
async function deepened(finding: Finding, file: string, depth: InspectOptions['depth'], decoder: Decoder): Promise<Finding> {
  if (depth === 'header' || finding.facts === null) return finding;
  const digest = await digestOf(file);
  const facts = { ...finding.facts, digest };
  if (facts.kind !== 'pdf' || facts.seal === 'unpacks') return { facts, problem: null };
  const pages = await readFile(file)
    .then((bytes) => decoder.measurePdf(bytes))
    .catch(() => null);
  if (pages === null || pages.count < 1) return { facts, problem: null };
  return { facts: { ...facts, pages: pages.count, width: pages.width, height: pages.height }, problem: null };
}

function sorted(paths: readonly string[], findings: readonly Finding[]): Pick<Inspection, 'facts' | 'problems'> {
  const facts = new Map<string, PictureFacts>();
  const problems: PictureProblem[] = [];
  for (const [index, path] of paths.entries()) {
    const finding = findings[index];
    if (finding?.facts) facts.set(path, finding.facts);
    else if (finding?.problem) problems.push({ path, ...finding.problem });
  }
  return { facts, problems };
}
