/** What goes into the file of a book besides its pages: the tables that it was made from, and the notes of a copy that has them. */
import type { Attachment } from '../book/make-book.ts';
import { dataFilesOf } from '../exports/data-files.ts';
import type { NoteFile } from '../exports/keepers-notes.ts';
import type { JournalRecord } from '../journal/record.ts';

/** The tables as they are published, and the texts of the journal. */
export async function attachmentsOf(copy: JournalRecord, notes: readonly NoteFile[]): Promise<readonly Attachment[]> {
  const tables = dataFilesOf(copy).filter(({ path }) => path.endsWith('.csv'));
  const made = tables.map(async ({ path, holds, make }) => ({
    name: path.slice(path.lastIndexOf('/') + 1),
    holds,
    type: 'text/csv',
    content: String(await make(copy)),
  }));
  return [...(await Promise.all(made)), ...notes.filter(({ path }) => /\.(?:md|yaml)$/.test(path)).map(noteAttached)];
}

/** A name in the list of attachments has no folders. */
function noteAttached({ path, text }: NoteFile): Attachment {
  const note = path.endsWith('.md');
  return {
    name: path.replaceAll('/', ' - '),
    holds: note ? `the note ${path}, as it was written` : `the catalogue ${path}`,
    type: note ? 'text/markdown' : 'application/yaml',
    content: text,
  };
}
