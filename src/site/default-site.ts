/** The record for when Astro is started bare: the journal named by `ASFOUND_CONTENT`, else the demo. */
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { formatDiagnostics, PLAIN } from '../journal/diagnostics/format.ts';
import { openNoteStore } from '../markdown/note-store.ts';
import { picturesAsKnown } from '../photos/pictures.ts';
import { cacheFolder } from './cache-folder.ts';
import { checkJournal, hasErrors } from './check-journal.ts';
import type { SiteRecord } from './record.ts';
import { siteRecord } from './site-record.ts';
import { todayBy } from './today.ts';

/**
 * Compiles that journal.
 *
 * @throws an error that lists what is wrong with it
 */
export async function compileDefaultSite(env: Readonly<Record<string, string | undefined>> = process.env): Promise<SiteRecord> {
  const named = env.ASFOUND_CONTENT;
  const folder = named ? resolve(named) : fileURLToPath(new URL('../../content', import.meta.url));
  const cache = cacheFolder(env);
  const { record, diagnostics } = await checkJournal(folder, { today: todayBy(env), cache });
  if (record === null || hasErrors(diagnostics)) {
    throw new Error(formatDiagnostics(diagnostics, { paint: PLAIN, sourceOf: () => null, pathOf: (path) => path }));
  }
  const plan = await picturesAsKnown(record.journal, { root: folder, cache });
  const store = openNoteStore(cache, folder);
  const { site, kept } = siteRecord(record, plan, diagnostics, store);
  store.save(await kept);
  return site;
}
