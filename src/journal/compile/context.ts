/** What every part of compiling shares: the catalogues so far, and a place to put problems. */
import type { Code } from '../diagnostics/catalogue.ts';
import { type Sort, unknownName } from '../diagnostics/diagnostic.ts';
import {
  type Charge,
  type Consumable,
  type ConsumableId,
  GENERAL,
  type Journal,
  type MilestoneId,
  type Minor,
  type Part,
  type PartId,
  type PersonId,
  type Place,
  type Position,
  type PositionId,
} from '../model.ts';
import type { Reporter } from '../read/reporter.ts';
import { readOwnAmount } from '../values/money.ts';

/** The journal without its sessions, its maps still being filled. */
export interface Catalogues extends Omit<Journal, 'sessions' | 'drawings' | 'threads' | 'consumables' | 'parts' | 'positions'> {
  readonly consumables: Map<ConsumableId, Consumable>;
  readonly parts: Map<PartId, Part>;
  readonly positions: Map<PositionId, Position>;
}

/** What a note does not lay to a part or a subsystem. */
export const UNDER_GENERAL: Charge = { part: null, subsystem: GENERAL };

/** Turns names in notes into what they name; an unknown one is reported, and taken for the nearest that is known. */
export interface Names {
  part(id: string, place: Place): Part | null;
  person(id: string, place: Place): PersonId | null;
  milestone(id: string, place: Place): MilestoneId | null;
  consumable(id: string, place: Place): Consumable | null;
  position(id: string, place: Place): PositionId | null;
  charge(id: string, place: Place): Charge | null;
  money(text: string, place: Place): Minor | null;
}

export function namesIn(catalogues: Catalogues, out: Reporter): Names {
  const { parts, people, consumables, positions, subsystems, settings } = catalogues;
  const milestones = new Map(catalogues.milestones.map((milestone) => [milestone.id, milestone]));
  const charges = chargesIn(catalogues);
  const named =
    <T>(code: Code, what: Sort | readonly Sort[], known: ReadonlyMap<string, T>, nameOf: (thing: T) => string | undefined) =>
    (id: string, place: Place): T | null => {
      const found = known.get(id);
      if (found !== undefined) return found;
      const called = [...known].filter(([, thing]) => sameWords(nameOf(thing), id)).map(([one]) => one);
      const more = unknownName(what, id, known.keys(), called.length === 1 ? called[0] : undefined);
      out.report(code, place, `There is no ${[what].flat().join(' or ')} \`${id}\`.`, more);
      const { nearest } = more.unknown;
      return nearest === null ? null : (known.get(nearest) ?? null);
    };
  const idOf =
    (name: (id: string, place: Place) => { readonly id: string } | null) =>
    (id: string, place: Place): string | null =>
      name(id, place)?.id ?? null;
  return {
    part: named('A401', 'part', parts, ({ name }) => name),
    person: idOf(named('A402', 'person', people, ({ name }) => name)),
    milestone: idOf(named('A404', 'milestone', milestones, ({ name }) => name)),
    consumable: named('A405', 'consumable', consumables, ({ name }) => name),
    position: idOf(named('A407', 'position', positions, ({ name }) => name)),
    charge: named(
      'A408',
      ['part', 'subsystem'],
      charges,
      ({ part, subsystem }) => (part === null ? subsystems.get(subsystem) : parts.get(part))?.name,
    ),
    money: (text, place) => out.take(readOwnAmount(text, settings), place),
  };
}

/** Whether a name is what was written where an id belongs. */
function sameWords(name: string | undefined, written: string): boolean {
  return name?.trim().toLowerCase() === written.trim().toLowerCase();
}

/** What a line may be laid to, by its id: every subsystem, then every part. */
function chargesIn({ parts, subsystems }: Catalogues): ReadonlyMap<string, Charge> {
  const whole = [...subsystems.keys()].map((subsystem) => [subsystem, { part: null, subsystem }] as const);
  return new Map<string, Charge>([...whole, ...[...parts.values()].map(({ id, subsystem }) => [id, { part: id, subsystem }] as const)]);
}
