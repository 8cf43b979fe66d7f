/** The notes and catalogues as a copy may have them. */
import type { ArchiveContents } from '../exports/archive-words.ts';
import { keepersNotes, NotCleaned, type NoteFile } from '../exports/keepers-notes.ts';
import { recordJson } from '../exports/record-json.ts';
import { compileJournal } from '../journal/pipeline.ts';
import type { JournalRecord } from '../journal/record.ts';
import { type LoadedSources, loadJournal } from '../load/load.ts';
import { EXIT, Refusal } from './exit-codes.ts';

/**
 * The notes go on with the vehicle to its next keeper; of other copies they say what these leave out.
 *
 * @param all the record is of every note: those of a past day would be the notes of later days too
 */
export function notesKind({ copy }: JournalRecord, all: boolean): ArchiveContents['notes'] {
  if (copy.leavesOut.length === 0) return 'as written';
  return copy.leavesOut.every((kind) => kind === 'former-private') && all ? 'without former private' : 'none';
}

/** @returns the texts of the journal as the copy has them; none where it has none */
export function notesOf(folder: string, whole: JournalRecord, copy: JournalRecord, all: boolean): readonly NoteFile[] {
  const kind = notesKind(copy, all);
  if (kind === 'none' || (kind === 'as written' && !all)) return [];
  const sources = loadJournal(folder);
  const files = sources.files.map(({ path, bytes }) => ({ path, text: new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes) }));
  return kind === 'as written' ? files : cleaned(sources, files, whole, copy);
}

/** The cleaned notes, once it is known that they make the very journal of the copy. */
function cleaned(sources: LoadedSources, files: readonly NoteFile[], whole: JournalRecord, copy: JournalRecord): readonly NoteFile[] {
  const left = cleanedOf(files, whole, copy);
  const encoder = new TextEncoder();
  const again = left.map(({ path, text }) => ({ path, bytes: encoder.encode(text) }));
  const { record } = compileJournal({ ...sources, files: again }, { today: whole.day });
  if (record === null || said(record) !== said(copy)) throw new Refusal(EXIT.ownFault, 'the cleaned notes do not make the copy.');
  return left;
}

function cleanedOf(files: readonly NoteFile[], whole: JournalRecord, copy: JournalRecord): readonly NoteFile[] {
  try {
    return keepersNotes(files, whole.journal, copy.journal);
  } catch (error) {
    if (!(error instanceof NotCleaned)) throw error;
    throw new Refusal(
      EXIT.journalHasErrors,
      `${error.message}: the field \`private\` cannot be taken out without touching more. Write it on a line of its own.`,
    );
  }
}

/** What a record says, wherever it says it. */
function said(record: JournalRecord): string {
  const { copy, ...rest } = recordJson(record);
  return JSON.stringify(rest, (name, value) => (/lace$|^bodyLine$/.test(name) ? undefined : value));
}
