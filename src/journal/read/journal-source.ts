/** A journal as it is read: what every file says, typed, and where each of its values is written. */
import type { ConsumableSource, PartSource } from '../schema/catalogues.ts';
import type { IdentitySource } from '../schema/identity.ts';
import type { JournalSource } from '../schema/journal.ts';
import type { SessionSource } from '../schema/session.ts';
import type { StatementSource } from '../schema/statement.ts';
import type { SubsystemId } from '../schema/words.ts';
import type { DrawingSource } from './drawing.ts';
import type { Prose } from './prose.ts';
import type { Tree } from './source/tree.ts';
import type { Read, WrittenEntry } from './written-entry.ts';

export interface Understood<T> {
  readonly value: T;
  readonly tree: Tree;
  /** Where something has been found wrong, as `line:column`. */
  readonly told: ReadonlySet<string>;
}

export interface PartsFile {
  readonly file: string;
  readonly subsystem: SubsystemId;
  readonly parts: readonly WrittenEntry<PartFields>[];
  readonly tree: Tree;
}

/** What the file of a closed statement says. */
export type StatementFields = Read<StatementSource>;

export interface StatementFile {
  readonly file: string;
  readonly value: StatementFields;
  readonly tree: Tree;
}

export interface IdentityFile {
  /** Named for the file. */
  readonly id: string;
  readonly value: IdentityFields;
  readonly tree: Tree;
}

/** What journal.yaml says. */
export type JournalFields = Read<JournalSource>;

/** What consumables.yaml says of one of them. */
export type ConsumableFields = Read<ConsumableSource>;
/** What a catalogue says of a part. */
export type PartFields = Read<PartSource>;
/** What the file of a points table says. */
export type IdentityFields = Read<IdentitySource>;

/** What the front matter of a note says. */
export type NoteFields = Read<SessionSource>;

/** A note, read: its fields, where they are, and its prose. */
export interface NoteSource {
  readonly id: string;
  readonly file: string;
  readonly source: NoteFields;
  readonly tree: Tree;
  readonly prose: Prose;
  readonly body: string;
  /** The line of the file on which the prose begins. */
  readonly bodyLine: number;
  /** Where something has been found wrong already, as `line:column`. */
  readonly told: ReadonlySet<string>;
  /** Nothing says of which day it is: it is looked through, and has no place in the journal. */
  readonly undated: boolean;
}

/** The files of a journal as far as they were understood. */
export interface ReadJournal {
  readonly journal: Understood<JournalFields> | null;
  readonly consumables: Understood<Readonly<Record<string, ConsumableFields>>> | null;
  readonly parts: readonly PartsFile[];
  readonly identity: readonly IdentityFile[];
  readonly drawings: readonly DrawingSource[];
  readonly statements: readonly StatementFile[];
  readonly notes: readonly NoteSource[];
}
