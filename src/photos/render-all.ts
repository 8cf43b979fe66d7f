/** Renders what a plan names, as far as it is not in the cache, and places all of it into a site. */
import { statSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { basename, join } from 'node:path';
import { type CacheEntry, type EntryCache, openEntryCache } from '../disk/entry-cache.ts';
import { pathWithin } from '../disk/path-within.ts';
import { type Decoder, withDecoder } from './decoder.ts';
import { kindByName } from './facts.ts';
import { eachOf } from './in-flight.ts';
import type { PictureProblem } from './inspect.ts';
import { linkInto, prune } from './place-file.ts';
import { cleanedPaper } from './place-paper.ts';
import { type PaperFile, type PicturePlan, picturePlan, type Rendition } from './plan.ts';
import { PAPERS_FOLDER, PICTURES_FOLDER } from './plan-pictures.ts';
import { CannotRender, filesOf, namesOf, renderPicture } from './render-picture.ts';

export interface Progress {
  readonly done: number;
  readonly total: number;
  /** By the pace so far; null until there is one. */
  readonly secondsLeft: number | null;
}

export interface RenderOptions {
  /** The journal folder. */
  readonly root: string;
  /** The cache folder. */
  readonly cache: string;
  /** Called after each rendered picture; not at all when everything is in the cache. */
  readonly onProgress?: (progress: Progress) => void;
  /** Stops between two pictures; the promise then rejects with its reason. */
  readonly signal?: AbortSignal;
  /** What the cache may hold besides what this plan uses; 4 GB when not said. */
  readonly mostCacheBytes?: number;
}

export interface Rendered {
  /** The plan with mean colours, and without what could not be rendered. */
  readonly plan: PicturePlan;
  readonly problems: readonly PictureProblem[];
  /** PDFs that are published without a picture of their first page, which cannot be drawn. */
  readonly undrawn: readonly string[];
  /** Pictures that were unpacked, and those that came from the cache. */
  readonly rendered: number;
  readonly reused: number;
}

const MOST_CACHE_BYTES = 4 * 1024 ** 3;

/**
 * @param plan what to make
 * @param site the root of the site; files of earlier plans are removed from it
 * @returns what was done; a picture that cannot be rendered is a problem and does not stop the others
 * @throws the file system's error when the cache or the site cannot be written
 */
export function renderAll(plan: PicturePlan, site: string, options: RenderOptions): Promise<Rendered> {
  return withDecoder((decoder) => renderWith(decoder, plan, site, options));
}

async function renderWith(decoder: Decoder, plan: PicturePlan, site: string, options: RenderOptions): Promise<Rendered> {
  const cache = openEntryCache(options.cache, 'pictures');
  const { entries, missing } = lookUp(plan, cache);
  const reused = entries.size;
  const failed = await renderMissing(missing, entries, cache, decoder, options);
  for (const rendition of plan.data.renditions) {
    const entry = entries.get(rendition.key);
    if (entry) await place(rendition, entry, site, cache, decoder, options);
  }
  const unplaced = await placePapers(plan.data.papers, site, cache, decoder, options);
  pruneSite(plan, site);
  if (missing.length > 0) cache.sweep(options.mostCacheBytes ?? MOST_CACHE_BYTES);
  const papers = failed.filter(isPaper).map(({ path }) => path);
  const problems = [...failed.filter((one) => !isPaper(one)), ...unplaced];
  return { plan: asRendered(plan, entries, site), problems, undrawn: papers, rendered: missing.length - failed.length, reused };
}

const isPaper = ({ path }: PictureProblem): boolean => kindByName(path) === 'pdf';

/** One rendition for each key: pictures of the same bytes are rendered once. */
function lookUp(plan: PicturePlan, cache: EntryCache): { entries: Map<string, CacheEntry>; missing: Rendition[] } {
  const entries = new Map<string, CacheEntry>();
  const missing = new Map<string, Rendition>();
  for (const rendition of plan.data.renditions) {
    if (entries.has(rendition.key) || missing.has(rendition.key)) continue;
    const entry = cache.find(rendition.key, namesOf(rendition));
    if (entry) entries.set(rendition.key, entry);
    else missing.set(rendition.key, rendition);
  }
  return { entries, missing: [...missing.values()] };
}

/** One picture a core at a time: memory stays what that takes, however many pictures there are. */
async function renderMissing(
  missing: readonly Rendition[],
  entries: Map<string, CacheEntry>,
  cache: EntryCache,
  decoder: Decoder,
  options: RenderOptions,
): Promise<PictureProblem[]> {
  const problems: PictureProblem[] = [];
  const started = performance.now();
  let done = 0;
  await eachOf(missing, availableParallelism(), async (rendition) => {
    options.signal?.throwIfAborted();
    const result = await renderInto(rendition, cache, options.root, decoder);
    if ('folder' in result) entries.set(rendition.key, result);
    else problems.push(result);
    done += 1;
    const pace = (performance.now() - started) / 1000 / done;
    options.onProgress?.({ done, total: missing.length, secondsLeft: done < 3 ? null : Math.ceil(pace * (missing.length - done)) });
  });
  return problems.sort((a, b) => (a.path < b.path ? -1 : 1));
}

/** The entry of a rendition, or what is wrong with the picture. Faults of the disk are passed on. */
async function renderInto(rendition: Rendition, cache: EntryCache, root: string, decoder: Decoder): Promise<CacheEntry | PictureProblem> {
  try {
    return await cache.make(rendition.key, (folder) => renderPicture(rendition, join(root, rendition.path), folder, decoder));
  } catch (error) {
    if (error instanceof CannotRender) return { path: rendition.path, message: error.message, hint: error.hint };
    throw error;
  }
}

/** An entry may be swept away by another run between being found and being linked; then it is made again. */
async function place(
  rendition: Rendition,
  entry: CacheEntry,
  site: string,
  cache: EntryCache,
  decoder: Decoder,
  { root }: RenderOptions,
): Promise<void> {
  try {
    linkAll(rendition, entry, site);
  } catch (error) {
    if (cache.find(rendition.key, namesOf(rendition)) !== null) throw error;
    const again = await renderInto(rendition, cache, root, decoder);
    if ('folder' in again) linkAll(rendition, again, site);
  }
}

function linkAll(rendition: Rendition, entry: CacheEntry, site: string): void {
  for (const { file } of filesOf(rendition)) linkInto(join(entry.folder, basename(file)), pathWithin(site, file));
}

/** Papers are few beside pictures and cleaned in milliseconds: one after the other. */
async function placePapers(
  papers: readonly PaperFile[],
  site: string,
  cache: EntryCache,
  decoder: Decoder,
  { root, signal }: RenderOptions,
): Promise<PictureProblem[]> {
  const problems: PictureProblem[] = [];
  for (const paper of papers) {
    signal?.throwIfAborted();
    try {
      linkInto(await cleanedPaper(paper, root, cache, decoder), pathWithin(site, paper.file));
    } catch (error) {
      if (!(error instanceof CannotRender)) throw error;
      problems.push({ path: paper.path, message: error.message, hint: error.hint });
    }
  }
  return problems;
}

function pruneSite(plan: PicturePlan, site: string): void {
  const names = (files: readonly { readonly file: string }[]): Set<string> => new Set(files.map((one) => basename(one.file)));
  prune(join(site, PICTURES_FOLDER), names(plan.data.renditions.flatMap(filesOf)), /^[0-9a-f]{16}-\d+\.(webp|jpg)$/u);
  prune(join(site, PAPERS_FOLDER), names(plan.data.papers), /-[0-9a-f]{12}\.pdf$/u);
}

/** The plan with what is known now: mean colours, sizes of papers, and which pictures there are. */
function asRendered(plan: PicturePlan, entries: ReadonlyMap<string, CacheEntry>, site: string): PicturePlan {
  const renditions = plan.data.renditions.flatMap((one) => {
    const entry = entries.get(one.key);
    return entry ? [{ ...one, placeholder: entry.colour }] : [];
  });
  const byPath = new Map(renditions.map((one) => [one.path, one]));
  const papers = plan.data.papers.map((one) => {
    const bytes = statSync(join(site, one.file), { throwIfNoEntry: false })?.size ?? one.bytes;
    return { ...one, bytes, firstPage: byPath.get(one.path) ?? null };
  });
  return picturePlan({ ...plan.data, renditions, papers });
}
