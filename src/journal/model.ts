/**
 * The compiled journal: what every later stage and every page reads.
 *
 * The tree is plain data, ordered, with every reference resolved to an id that exists. Whatever
 * could not be understood has been reported as a diagnostic and left out.
 */

import type { Consumable, Milestone, Part, Person, Position, Settings, Subsystem, Thread } from './model/catalogues.ts';
import type { Drawing } from './model/drawing.ts';
import type { IdentityTable } from './model/identity-tables/table.ts';
import type { Session } from './model/session.ts';
import type { FrozenStatement } from './model/statement.ts';
import type { ConsumableId, PartId, PersonId, PositionId, SubsystemId } from './schema/words.ts';

export type { Place } from './diagnostics/place.ts';
export * from './model/catalogues.ts';
export * from './model/session.ts';
export * from './model/statement.ts';
export type { Destination } from './schema/fields.ts';
export * from './schema/words.ts';
export type { IsoDate } from './values/date.ts';
export type { Minor } from './values/decimal.ts';
export type { Foreign } from './values/money.ts';
export type { Quantity } from './values/quantity.ts';
export type { Tax } from './values/tax.ts';
export type { Dimension } from './values/units.ts';

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
  /** In declared order. */
  readonly threads: readonly Thread[];
  /** By their names. */
  readonly drawings: readonly Drawing[];
  /** Those that were closed, by number. */
  readonly statements: readonly FrozenStatement[];
  /** In the order in which they happened. */
  readonly sessions: readonly Session[];
  /** In a copy that names no firm: which one an entry is of, by where it is written. The same number is the same firm. */
  readonly unnamedFirms?: ReadonlyMap<string, number>;
}
