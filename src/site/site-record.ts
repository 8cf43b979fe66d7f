/** Makes what pages read out of a checked journal: the notes rendered, the pictures planned. */
import type { Diagnostic } from '../journal/diagnostics/diagnostic.ts';
import type { JournalRecord } from '../journal/record.ts';
import type { NoteStore } from '../markdown/note-store.ts';
import { renderNotes } from '../markdown/render-notes.ts';
import type { PicturePlan } from '../photos/plan.ts';
import type { SiteRecord } from './record.ts';

export interface MadeSite {
  readonly site: SiteRecord;
  /** Rendered notes, for the store to keep or for the next making to start from. */
  readonly kept: ReadonlyMap<string, string>;
}

/**
 * @param record a journal without errors
 * @param pictures what its pictures become
 * @param warnings what is to be said about it
 * @param store notes rendered before
 */
export async function siteRecord(
  record: JournalRecord,
  pictures: PicturePlan,
  warnings: readonly Diagnostic[],
  store: Pick<NoteStore, 'kept'>,
): Promise<MadeSite> {
  const notes = await renderNotes(record, pictures, store);
  const site: SiteRecord = { ...record, pictures, warnings, noteHtml: (session) => notes.html.get(session) ?? '' };
  return { site, kept: notes.kept };
}
