/** The pages of a build, taken over from the last one where they would be the same, and kept for the next. */

import type { Address } from '../addresses.ts';
import { editionDigest } from '../edition-store.ts';
import type { SiteRecord } from '../record.ts';
import { PROGRAM } from '../tool-digest.ts';
import type { Asking } from './asking.ts';
import { digestOf } from './digest.ts';
import { type KeptPage, openPageStore } from './page-store.ts';
import { QUESTIONS } from './questions.ts';
import { takingOver } from './take-over.ts';

export interface KeptPages {
  /** The page, compressed, where it would be the same; else null. */
  take(page: Address): Promise<Uint8Array | null>;
  /** For a page that was just made: what to call with it, compressed; null where it is none that can be kept. */
  made(page: Address): ((bytes: Uint8Array) => void) | null;
  /** Keeps the pages that were taken or made. */
  save(): void;
}

/**
 * @param record with `asking`
 * @param cache the cache folder
 * @param folder the journal folder
 */
export function keptPages(record: SiteRecord & { readonly asking: Asking }, cache: string, folder: string): KeptPages {
  const { asking, journal, copy } = record;
  // What every page has, whatever it shows: how it is made, and what is set for the whole of the journal.
  const edition = digestOf([editionDigest(), journal.settings, copy]);
  const store = openPageStore(cache, [PROGRAM, folder, copy.name], edition);
  const takeOver = takingOver(record, QUESTIONS, store, asking);
  const pages = new Map<Address, KeptPage>();
  return {
    take: async (page) => {
      const kept = await takeOver(page);
      if (kept !== null) pages.set(page, kept);
      return kept?.bytes ?? null;
    },
    made: (page) => {
      const told = asking.end(page);
      return told && ((bytes) => void pages.set(page, { told, bytes }));
    },
    save: () => store.save(pages, asking.all),
  };
}
