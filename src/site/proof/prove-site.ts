import { withheldTexts } from '../../journal/copy/withheld.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { programScripts } from '../client-scripts.ts';
import { dayOnPages } from '../day-on-pages.ts';
import { editionStore } from '../edition-store.ts';
import { PROGRAM } from '../tool-digest.ts';
import { type Leak, leaksIn } from './prove.ts';
import { provedBefore } from './proved-before.ts';

export interface SiteToProve {
  /** The site, which is not yet published. */
  readonly folder: string;
  /** The journal's folder. */
  readonly of: string;
  /** The cache folder. */
  readonly cache: string;
  progress(done: number, total: number): void;
}

/** Looks through a site for what its copy withholds; what was looked through for the last one and has not changed is known. */
export async function leaksOfSite(
  whole: JournalRecord,
  copy: JournalRecord,
  { folder, of, cache, progress }: SiteToProve,
): Promise<readonly Leak[]> {
  const withheld = withheldTexts(whole, copy);
  if (withheld.length === 0) return [];
  const own = Object.values(await programScripts(editionStore(cache)));
  const before = provedBefore({ cache, site: [PROGRAM, of, copy.copy.name], day: dayOnPages(copy) }, withheld);
  return leaksIn(folder, withheld, { progress, own, before });
}
