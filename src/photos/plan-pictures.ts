/** Works out which files each picture becomes. Pure: facts in, names and sizes out; nothing is read or rendered. */
import { createHash } from 'node:crypto';
import type { PictureFacts } from './facts.ts';
import { type PaperFile, type PicturePlan, picturePlan, type RenderedFile, type Rendition } from './plan.ts';
import { edgesFor, FALLBACK_SIZE, fitted, PAPER_EDITION, PAPER_SIZE, RECIPE_DIGEST } from './recipe.ts';
import { instantTaken } from './taken.ts';

export interface PlanOptions {
  /** What of a camera's facts is shown. */
  readonly keep: readonly ('time' | 'camera')[];
  /** IANA name; a clock time without an offset is taken as of this zone. */
  readonly timeZone: string;
  /** Mean colours by key, of what has been rendered before. */
  readonly colours?: ReadonlyMap<string, string>;
}

/** Folders of the site that hold nothing but what this plan names. */
export const PICTURES_FOLDER = 'pictures';
export const PAPERS_FOLDER = 'papers';

/**
 * @param facts with digests; what has none is left out
 * @returns the plan; the same facts give the same plan, whatever their order
 */
export function planPictures(facts: Iterable<PictureFacts>, options: PlanOptions): PicturePlan {
  const all = [...facts].filter((one) => one.digest !== null).sort(byPath);
  const renditions = all.filter((one) => one.width > 0).map((one) => renditionOf(one, options));
  const firstPages = new Map(renditions.map((one) => [one.path, one]));
  return picturePlan({
    renditions,
    papers: all.filter((one) => one.kind === 'pdf').map((one) => paperOf(one, firstPages.get(one.path) ?? null)),
    inOrder: all
      .filter((one) => one.kind !== 'pdf')
      .sort(byTimeTaken(options.timeZone))
      .map((one) => one.path),
  });
}

/** The key of the cache: the same for the same bytes and recipe, under whatever name. */
export function keyOf(digest: string): string {
  return createHash('sha256').update(`${digest}:${RECIPE_DIGEST}`).digest('hex').slice(0, 16);
}

/** The same for a PDF that is published without its metadata. */
export function paperKeyOf(digest: string): string {
  return createHash('sha256').update(`${digest}:paper:${PAPER_EDITION}`).digest('hex').slice(0, 16);
}

function renditionOf(facts: PictureFacts, options: PlanOptions): Rendition {
  const key = keyOf(facts.digest ?? '');
  const size = facts.kind === 'pdf' ? pageInPixels(facts) : facts;
  const edges = edgesFor(size.width, size.height);
  const files = edges.map((edge) => rendered(key, fitted(size.width, size.height, edge), 'webp'));
  const full = files[files.length - 1] ?? rendered(key, size, 'webp');
  return {
    path: facts.path,
    key,
    width: full.width,
    height: full.height,
    sources: [{ type: 'image/webp', srcset: files }],
    fallback: rendered(key, fitted(size.width, size.height, FALLBACK_SIZE), 'jpg'),
    full,
    placeholder: options.colours?.get(key) ?? null,
    takenAt: options.keep.includes('time') ? facts.takenAt : null,
    camera: options.keep.includes('camera') ? facts.camera : null,
  };
}

/** Pages are drawn, so they can be of any size; points say only their shape. */
function pageInPixels(facts: PictureFacts): { width: number; height: number } {
  const scale = PAPER_SIZE / Math.max(facts.width, facts.height);
  return { width: Math.max(1, Math.round(facts.width * scale)), height: Math.max(1, Math.round(facts.height * scale)) };
}

function rendered(key: string, size: { width: number; height: number }, ending: 'webp' | 'jpg'): RenderedFile {
  return { file: `${PICTURES_FOLDER}/${key}-${size.width}.${ending}`, width: size.width, height: size.height };
}

/** Named for a reader who finds the folder in thirty years; the digest keeps two `receipt.pdf` apart. */
function paperOf(facts: PictureFacts, firstPage: Rendition | null): PaperFile {
  const name = (facts.path.split('/').pop() ?? '').replace(/\.[^.]+$/u, '');
  const plain = name
    .normalize('NFKD')
    .replace(/[^\w]+/gu, '-')
    .replace(/^-+|-+$/gu, '')
    .toLowerCase()
    .slice(0, 60);
  const key = paperKeyOf(facts.digest ?? '');
  const file = `${PAPERS_FOLDER}/${plain || 'paper'}-${key.slice(0, 12)}.pdf`;
  return { path: facts.path, file, kind: 'pdf', key, bytes: facts.bytes, pages: facts.pages, firstPage };
}

function byPath(a: PictureFacts, b: PictureFacts): number {
  return a.path < b.path ? -1 : a.path > b.path ? 1 : 0;
}

function byTimeTaken(timeZone: string): (a: PictureFacts, b: PictureFacts) => number {
  const when = (facts: PictureFacts): number => (facts.takenAt ? instantTaken(facts.takenAt, timeZone) : Number.POSITIVE_INFINITY);
  return (a, b) => {
    const [first, second] = [when(a), when(b)];
    return first === second ? byPath(a, b) : first - second;
  };
}
