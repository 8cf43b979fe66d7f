/** Makes what pages read out of a checked journal: the notes rendered, the pictures planned. */
import type { Diagnostic } from '../journal/diagnostics/diagnostic.ts';
import type { JournalRecord } from '../journal/record.ts';
import type { NoteStore } from '../markdown/note-store.ts';
import { notesOnDemand, renderNotes } from '../markdown/render-notes.ts';
import type { PicturePlan } from '../photos/plan.ts';
import type { Asking } from './kept/asking.ts';
import type { SiteRecord } from './record.ts';

export interface MadeSite {
  readonly site: SiteRecord;
  /** Rendered notes when all are, for the store to keep or for the next making to start from. */
  readonly kept: Promise<ReadonlyMap<string, string>>;
}

/**
 * Begins to render the notes, which goes on while the pages that do not show any are made.
 *
 * @param record a journal without errors
 * @param pictures what its pictures become
 * @param warnings what is to be said about it
 * @param store notes rendered before
 * @param asking see `SiteRecord`
 */
export function siteRecord(
  record: JournalRecord,
  pictures: PicturePlan,
  warnings: readonly Diagnostic[],
  store: Pick<NoteStore, 'kept'>,
  asking?: Asking,
): MadeSite {
  const notes = renderNotes(record, pictures, store);
  // Whoever waits for it is told of a failure; until somebody does it is nobody's.
  notes.catch(() => undefined);
  const noteHtml: SiteRecord['noteHtml'] = async (session) => (await notes).html.get(session) ?? '';
  return { site: { ...record, pictures, warnings, noteHtml, ...(asking && { asking }) }, kept: notes.then(({ kept }) => kept) };
}

/**
 * The same for pages that are made one at a time, as they are asked for: so is each note.
 *
 * @param kept notes rendered before, by key; what is rendered is added
 */
export function servedRecord(
  record: JournalRecord,
  pictures: PicturePlan,
  warnings: readonly Diagnostic[],
  kept: Map<string, string>,
): SiteRecord {
  const noteHtml = notesOnDemand(record, pictures, kept);
  return { ...record, pictures, warnings, noteHtml: async (session) => noteHtml(session) };
}
