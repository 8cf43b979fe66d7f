/** Compiles a journal for the pages: the record, and its notes as HTML. */
import type { SiteRecord } from './record.ts';

/** The journal named by `ASFOUND_CONTENT`, else the demo. */
export async function compileDefaultSite(): Promise<SiteRecord> {
  throw new Error('not yet');
}
