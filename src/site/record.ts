/**
 * The one seam to Astro. Pages call `theRecord()` and know nothing of files, notes or compiling.
 *
 * A command compiles the journal once and puts the result in place with `setRecord` before it starts
 * Astro. When Astro is started bare (type checks, tests), the journal named by `ASFOUND_CONTENT`, else
 * the demo, is compiled on the first call.
 */
import type { Diagnostic } from '../journal/diagnostics/diagnostic.ts';
import type { SessionId } from '../journal/model.ts';
import type { JournalRecord } from '../journal/record.ts';
import type { PicturePlan } from '../photos/plan.ts';
import type { Asking } from './kept/asking.ts';

/** What pages read: the record, and what presenting it needs. */
export interface SiteRecord extends JournalRecord {
  /** The prose of a session as HTML, ready for its own page (`sessions/<id>.html`); '' when it has none. */
  noteHtml(session: SessionId): Promise<string>;
  /** What each picture and paper becomes in the site. */
  readonly pictures: PicturePlan;
  /** Warnings of the compile, in file order; a site is never made from a journal with errors. */
  readonly warnings: readonly Diagnostic[];
  /** In a build that keeps its pages: what each of them asks. Such pages have a mark where the record's day stands. */
  readonly asking?: Asking | undefined;
}

const KEY = Symbol.for('asfound.record');
type Holder = { [KEY]?: SiteRecord | Promise<SiteRecord> };

/** Puts a compiled record in place; every page built or served from now on reads it. */
export function setRecord(record: SiteRecord): void {
  (globalThis as Holder)[KEY] = record;
}

/** The compiled record, compiled on the first call when no command has put one in place. */
export async function theRecord(): Promise<SiteRecord> {
  const holder = globalThis as Holder;
  holder[KEY] ??= import('./default-site.ts').then((site) => site.compileDefaultSite());
  return holder[KEY];
}
