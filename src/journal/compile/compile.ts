/** Read files → the journal: catalogues first, then every note against them, in order. */
import { startOf } from '../diagnostics/diagnostic.ts';
import { didYouMean } from '../diagnostics/nearest.ts';
import type { Journal, Session } from '../model.ts';
import type { Sources } from '../source/sources.ts';
import { compileConsumables } from './consumables.ts';
import { type Catalogues, type Names, namesIn, type Reporter } from './context.ts';
import { identityTables } from './identity.ts';
import { compileParts, type PartsFile } from './parts.ts';
import { type Shelf, shelfOf } from './paths.ts';
import type { ReadJournal } from './read-files.ts';
import { compileSession, type NoteSource } from './session.ts';
import { compileSettings } from './settings.ts';

/** @returns the journal, or null when journal.yaml was not understood: nothing can be read without it */
export function compile(read: ReadJournal, sources: Sources, out: Reporter): Journal | null {
  if (read.journal === null) return null;
  const identity = identityTables(read.identity, out);
  const catalogues = { ...compileSettings(read.journal.value, read.journal.tree, out), identityTables: identity };
  if (read.consumables) compileConsumables(read.consumables.value, read.consumables.tree, catalogues, out);
  compileParts(
    read.parts.filter((file) => ofKnownSubsystem(file, catalogues, out)),
    catalogues,
    out,
  );
  const names = namesIn(catalogues, out);
  const shelf = shelfOf(sources.assets);
  const notes = onePerId(read.notes, out);
  const sessions = notes.map((note) => sessionOf(note, catalogues, names, shelf, out));
  return { ...catalogues, sessions: sessions.sort(inOrder) };
}

/** What is found wrong where something was found wrong before is only its echo. */
function sessionOf(note: NoteSource, catalogues: Catalogues, names: Names, shelf: Shelf, out: Reporter): Session {
  const before = out.diagnostics.length;
  const session = compileSession(note, catalogues, names, shelf, out);
  if (note.told.size === 0) return session;
  const found = out.diagnostics.splice(before);
  out.diagnostics.push(...found.filter(({ code, place }) => code === 'A302' || !note.told.has(`${place.line}:${place.column}`)));
  return session;
}

function ofKnownSubsystem(file: PartsFile, { subsystems }: Catalogues, out: Reporter): boolean {
  if (subsystems.has(file.subsystem)) return true;
  const hint = didYouMean(file.subsystem, subsystems.keys());
  out.report('A403', startOf(file.file), `The file is named for a subsystem \`${file.subsystem}\`, which journal.yaml does not have.`, {
    hint,
  });
  return false;
}

function onePerId(notes: readonly NoteSource[], out: Reporter): NoteSource[] {
  const first = new Map<string, NoteSource>();
  for (const note of notes) {
    const other = first.get(note.id);
    if (!other) {
      first.set(note.id, note);
      continue;
    }
    out.report('A109', startOf(note.file), `This note makes the session id \`${note.id}\`, which is taken.`, {
      hint: 'Rename the file or its folder.',
      related: [{ place: startOf(other.file), message: 'This note makes it too.' }],
    });
  }
  return [...first.values()];
}

/** By date, then by file name: the order in which a journal happened. */
export function inOrder(a: Pick<Session, 'date' | 'file'>, b: Pick<Session, 'date' | 'file'>): number {
  if (a.date !== b.date) return a.date < b.date ? -1 : 1;
  return a.file < b.file ? -1 : a.file > b.file ? 1 : 0;
}
