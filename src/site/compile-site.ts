/** Makes what pages read out of a compiled journal: its notes rendered as they are asked for, its pictures planned. */
import type { Diagnostic } from '../journal/diagnostics/diagnostic.ts';
import type { SessionId } from '../journal/model.ts';
import type { JournalRecord } from '../journal/record.ts';
import { noteContexts } from '../markdown/note-context.ts';
import { recipeDigest } from '../markdown/recipe-digest.ts';
import { renderNote } from '../markdown/render.ts';
import type { PicturePlan } from '../photos/plan.ts';
import { type NoteCache, openNoteCache } from './note-cache.ts';
import type { SiteRecord } from './record.ts';

/**
 * Opens the rendered notes of a journal.
 *
 * @param folder the journal folder
 * @param cache the cache folder
 */
export function notesOf(folder: string, cache: string): NoteCache {
  return openNoteCache(cache, folder, recipeDigest());
}

/**
 * @param record the compiled journal
 * @param warnings what is to be said about it
 * @param pictures what its pictures become
 * @param notes where rendered notes are kept; a note is looked up, or rendered, when its page asks for it
 */
export function siteRecordOf(
  record: JournalRecord,
  warnings: readonly Diagnostic[],
  pictures: PicturePlan,
  notes: NoteCache,
): SiteRecord {
  const contextOf = noteContexts(record, pictures);
  const sessions = new Map(record.journal.sessions.map((session) => [session.id, session]));
  const noteHtml = (id: SessionId): string => {
    const session = sessions.get(id);
    if (!session) return '';
    const context = contextOf(session);
    return notes.html(JSON.stringify([session.body, context]), () => renderNote(session.body, context).html);
  };
  return { ...record, pictures, warnings, noteHtml };
}
