/**
 * The compiled journal: what every later stage and every page reads.
 *
 * The tree is plain data, ordered, with every reference resolved to an id that exists. Whatever
 * could not be understood has been reported as a diagnostic and left out.
 */

import type { Consumable, Milestone, Part, Person, Position, Settings, Subsystem } from './model/catalogues.ts';
import type { Session } from './model/session.ts';
import type { ConsumableId, PartId, PersonId, PositionId, SubsystemId } from './model/words.ts';
import type { IdentityTable } from './registers/identity-tables/table.ts';

export * from './model/catalogues.ts';
export * from './model/session.ts';
export * from './model/words.ts';

export interface Journal {
  readonly settings: Settings;
  readonly people: ReadonlyMap<PersonId, Person>;
  readonly subsystems: ReadonlyMap<SubsystemId, Subsystem>;
  /** In declared order. */
  readonly milestones: readonly Milestone[];
  readonly stores: readonly string[];
  readonly consumables: ReadonlyMap<ConsumableId, Consumable>;
  readonly parts: ReadonlyMap<PartId, Part>;
  readonly positions: ReadonlyMap<PositionId, Position>;
  /** Published points tables of a vehicle's identity, the journal's own first. */
  readonly identityTables: readonly IdentityTable[];
  /** By date, then by file name. */
  readonly sessions: readonly Session[];
}
