/** Sessions kept from one compiling of a journal to the next: most evenings one note changes, and the others come to what they came to. */
import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import type { SureRepair } from '../diagnostics/repair.ts';
import type { Session } from '../model.ts';
import type { NoteSource, ReadJournal } from '../read/journal-source.ts';
import type { Sources } from '../read/source/sources.ts';

export interface KnownSession {
  readonly session: Session;
  readonly diagnostics: readonly Diagnostic[];
  readonly repairs: readonly SureRepair[];
}

/** Sessions by their notes, all compiled against the same. */
export interface KnownSessions {
  declared: readonly unknown[];
  sessions: WeakMap<NoteSource, KnownSession>;
}

export function knownSessions(): KnownSessions {
  return { declared: [], sessions: new WeakMap() };
}

/**
 * All that notes are compiled against: what the catalogues were read as, and which other files there are. Catalogues that a
 * note brings are known by the tree of the note, from which they are made anew each time.
 */
export function declaredIn(read: ReadJournal, { assets }: Sources): readonly unknown[] {
  return [
    read.journal?.tree,
    read.consumables?.tree,
    ...read.identity.flatMap(({ id, tree }) => [id, tree]),
    ...read.parts.flatMap(({ subsystem, tree }) => [subsystem, tree]),
    ...assets.flatMap(({ path, size }) => [path, size]),
  ];
}

/** The sessions that still hold: none where anything that is declared has changed since. */
export function sessionsAgainst(known: KnownSessions, declared: readonly unknown[]): KnownSessions['sessions'] {
  const same = declared.length === known.declared.length && declared.every((one, n) => one === known.declared[n]);
  if (!same) {
    known.declared = declared;
    known.sessions = new WeakMap();
  }
  return known.sessions;
}
