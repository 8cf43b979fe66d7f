/** Renders a picture when a page under way asks for it. */
import { basename, join } from 'node:path';
import { type CacheEntry, openEntryCache } from '../disk/entry-cache.ts';
import { openDecoder } from './decoder.ts';
import { cleanedPaper } from './place-paper.ts';
import type { PicturePlan, Rendition } from './plan.ts';
import { filesOf, namesOf, renderPicture } from './render-picture.ts';

export interface OnDemand {
  /**
   * @param plan the plan in force
   * @param file as a page names it, relative to the root of the site: `pictures/…` or `papers/…`
   * @returns where the file lies on disk; null when the plan names no such file
   * @throws an `Error` when the picture cannot be rendered
   */
  fileFor(plan: PicturePlan, file: string): Promise<string | null>;
  close(): Promise<void>;
}

/**
 * @param root the journal folder
 * @param cache the cache folder
 */
export function renderOnDemand(root: string, cache: string): OnDemand {
  const entries = openEntryCache(cache, 'pictures');
  const decoder = openDecoder();
  const underWay = new Map<string, Promise<CacheEntry>>();
  const once = (rendition: Rendition): Promise<CacheEntry> => {
    const { key, path } = rendition;
    const made = underWay.get(key) ?? entries.make(key, (folder) => renderPicture(rendition, join(root, path), folder, decoder));
    underWay.set(key, made);
    return made.finally(() => underWay.delete(key));
  };
  return {
    async fileFor(plan, file) {
      const paper = plan.data.papers.find((one) => one.file === file);
      if (paper) return await cleanedPaper(paper, root, entries, decoder);
      const rendition = plan.data.renditions.find((one) => filesOf(one).some((other) => other.file === file));
      if (!rendition) return null;
      const entry = entries.find(rendition.key, namesOf(rendition)) ?? (await once(rendition));
      return join(entry.folder, basename(file));
    },
    close: () => decoder.close(),
  };
}
