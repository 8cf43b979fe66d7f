/** The notes of an archive that goes on with the vehicle to its next keeper. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { keepersNotes, NotCleaned, type NoteFile } from '../exports/keepers-notes.ts';
import { recordJson } from '../exports/record-json.ts';
import { compileJournal } from '../journal/pipeline.ts';
import type { JournalRecord } from '../journal/record.ts';
import { loadJournal } from '../load/load.ts';
import { EXIT, Refusal } from './exit-codes.ts';

/** A file that goes into an archive as it is. */
export interface AssetFile {
  readonly path: string;
  readonly from: string;
}

/**
 * Lays the cleaned notes down, once it is known that they make the very journal of the copy.
 *
 * @returns pictures, papers and clips, as they are
 */
export function layCleaned(
  folder: string,
  { whole, copy, made }: { readonly whole: JournalRecord; readonly copy: JournalRecord; readonly made: string },
): readonly AssetFile[] {
  const sources = loadJournal(folder);
  const files = sources.files.map(({ path, bytes }) => ({ path, text: new TextDecoder('utf-8', { ignoreBOM: true }).decode(bytes) }));
  const cleaned = cleanedOf(files, whole, copy);
  const encoder = new TextEncoder();
  const again = compileJournal(
    { ...sources, files: cleaned.map(({ path, text }) => ({ path, bytes: encoder.encode(text) })) },
    { today: whole.day },
  );
  if (again.record === null || said(again.record) !== said(copy))
    throw new Refusal(EXIT.ownFault, 'the cleaned notes do not make the copy.');
  for (const { path, text } of cleaned) {
    const file = join(made, 'journal', path);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  return sources.assets.map(({ path }) => ({ path: `journal/${path}`, from: join(folder, path) }));
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
