/** Read files → the journal: catalogues first, then every note against them, in order. */
import { startOf, unknownName } from '../diagnostics/diagnostic.ts';
import { sessionNamed } from '../model/session-named.ts';
import { inSessionOrder } from '../model/session-order.ts';
import type { Journal, Session } from '../model.ts';
import type { NoteSource, PartsFile, ReadJournal } from '../read/journal-source.ts';
import type { Reporter } from '../read/reporter.ts';
import type { Sources } from '../read/source/sources.ts';
import { compileConsumables } from './consumables.ts';
import { type Catalogues, namesIn } from './context.ts';
import { datedByName } from './dated-by-name.ts';
import { compileDrawings } from './drawings.ts';
import { identityTables } from './identity.ts';
import { declaredIn, type KnownSession, knownSessions, sessionsAgainst } from './known-sessions.ts';
import { linkableOf } from './linkable.ts';
import { compileParts } from './parts.ts';
import { assetsByFolder, checkTwins } from './paths.ts';
import { compileSession, type Surroundings } from './session.ts';
import { compileSettings } from './settings.ts';
import { statementsOf } from './statements.ts';
import { checkFront, compileThreads } from './threads.ts';

/**
 * @param known sessions that were compiled before; those that are compiled now are added
 * @returns the journal, or null when journal.yaml was not understood: nothing can be read without it
 */
export function compile(read: ReadJournal, sources: Sources, out: Reporter, known = knownSessions()): Journal | null {
  if (read.journal === null) return null;
  const identity = identityTables(read.identity, out);
  const catalogues = { ...compileSettings(read.journal.value, read.journal.tree, out), identityTables: identity };
  if (read.consumables) compileConsumables(read.consumables.value, read.consumables.tree, catalogues, out);
  for (const file of read.parts) checkSubsystem(file, catalogues, out);
  compileParts(read.parts, catalogues, out);
  const drawings = compileDrawings(read.drawings, catalogues.positions, out);
  const dated = read.notes.map((note) => datedByName(note, catalogues.settings.arrived, out));
  const notes = onePerId(dated, out);
  const linkable = linkableOf(dated, catalogues);
  const around = { catalogues, names: namesIn(catalogues, out), assets: assetsByFolder(sources.assets), linkable, out };
  checkTwins(sources.assets, out);
  const before = sessionsAgainst(known, declaredIn(read, sources));
  const sessions = notes.flatMap((note) => {
    const session = sessionAgain(note, around, before);
    return note.undated ? [] : [session];
  });
  const statements = statementsOf(read.statements, catalogues.settings, out);
  const threads = compileThreads(read.journal.value, read.journal.tree, around.names, out);
  checkFront(catalogues, sessions, read.journal.tree, out);
  return withCorrections({ ...catalogues, threads, drawings, statements, sessions: sessions.sort(inSessionOrder) });
}

/** `corrects` may name the day of a session; from here on it is the id. */
function withCorrections(journal: Journal): Journal {
  const named = ({ corrects }: Session) => (corrects === null ? null : (sessionNamed(journal, corrects)?.id ?? corrects));
  return { ...journal, sessions: journal.sessions.map((session) => ({ ...session, corrects: named(session) })) };
}

/** A session is compiled again where its note has changed, or what notes are compiled against. */
function sessionAgain(note: NoteSource, around: Surroundings, known: WeakMap<NoteSource, KnownSession>): Session {
  const { diagnostics, repairs } = around.out;
  const before = known.get(note);
  if (before !== undefined) {
    diagnostics.push(...before.diagnostics);
    repairs.push(...before.repairs);
    return before.session;
  }
  const [told, mended] = [diagnostics.length, repairs.length];
  const session = sessionOf(note, around);
  // Whether a link that says no kind leads anywhere depends on the other notes.
  if (note.prose.others.length === 0) {
    known.set(note, { session, diagnostics: diagnostics.slice(told), repairs: repairs.slice(mended) });
  }
  return session;
}

/** What is found wrong where something was found wrong before is only its echo. */
function sessionOf(note: NoteSource, around: Surroundings): Session {
  const { out } = around;
  const before = out.diagnostics.length;
  const session = compileSession(note, around);
  if (note.told.size === 0) return session;
  const found = out.diagnostics.splice(before);
  out.diagnostics.push(...found.filter(({ code, place }) => code === 'A302' || !note.told.has(`${place.line}:${place.column}`)));
  return session;
}

/** The parts of a file that is named for no subsystem are parts all the same: what notes say of them is still looked through. */
function checkSubsystem(file: PartsFile, { subsystems }: Catalogues, out: Reporter): void {
  if (subsystems.has(file.subsystem)) return;
  const message = `The file is named for a subsystem \`${file.subsystem}\`, which journal.yaml does not have.`;
  out.report('A403', startOf(file.file), message, unknownName('subsystem', file.subsystem, subsystems.keys()));
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
