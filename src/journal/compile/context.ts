/** What every part of compiling shares: the catalogues so far, and a place to put problems. */
import type { Code } from '../diagnostics/catalogue.ts';
import { didYouMean } from '../diagnostics/nearest.ts';
import type {
  Charge,
  Consumable,
  ConsumableId,
  Journal,
  MilestoneId,
  Minor,
  Part,
  PartId,
  PersonId,
  Place,
  Position,
  PositionId,
} from '../model.ts';
import { GENERAL } from '../model.ts';
import type { Reporter } from '../read/reporter.ts';
import { readAmount } from '../values/money.ts';

/** The journal without its sessions, its maps still being filled. */
export interface Catalogues extends Omit<Journal, 'sessions' | 'consumables' | 'parts' | 'positions'> {
  readonly consumables: Map<ConsumableId, Consumable>;
  readonly parts: Map<PartId, Part>;
  readonly positions: Map<PositionId, Position>;
}

/** Turns names in notes into what they name; an unknown one is reported, with the nearest that is known. */
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
  const { parts, people, milestones, consumables, positions, subsystems, settings } = catalogues;
  const unknown = (code: Code, place: Place, what: string, id: string, known: Iterable<string>): null => {
    out.report(code, place, `There is no ${what} \`${id}\`.`, { hint: didYouMean(id, known) });
    return null;
  };
  const milestoneIds = milestones.map((milestone) => milestone.id);
  return {
    part: (id, place) => parts.get(id) ?? unknown('A401', place, 'part', id, parts.keys()),
    person: (id, place) => people.get(id)?.id ?? unknown('A402', place, 'person', id, people.keys()),
    milestone: (id, place) => (milestoneIds.includes(id) ? id : unknown('A404', place, 'milestone', id, milestoneIds)),
    consumable: (id, place) => consumables.get(id) ?? unknown('A405', place, 'consumable', id, consumables.keys()),
    position: (id, place) => positions.get(id)?.id ?? unknown('A407', place, 'position', id, positions.keys()),
    charge: (id, place) => {
      const part = parts.get(id);
      if (part) return { part: part.id, subsystem: part.subsystem };
      if (subsystems.has(id) || id === GENERAL) return { part: null, subsystem: id };
      return unknown('A408', place, 'part or subsystem', id, [...subsystems.keys(), ...parts.keys()]);
    },
    money: (text, place) => out.take(readAmount(text, settings.currencyDigits, settings.currency), place),
  };
}
