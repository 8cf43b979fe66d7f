import type { Decision, IsoDate, MilestoneId, Part, PartId } from '../model.ts';
import type { MilestoneReached } from '../record.ts';
import { whereKey } from '../replay/words.ts';
import { type BagRow, bagsAt } from './bags.ts';
import { type ItemRow, itemsAt } from './open-items.ts';
import { type RegisterRow, registerAt } from './register.ts';
import type { RegisterSource } from './source.ts';
import { staysOf, type Whereat, whereaboutsAt } from './stays.ts';

/** A part whose whereabouts are others than they were. */
export interface Moved {
  readonly part: PartId;
  readonly before: readonly Whereat[];
  readonly after: readonly Whereat[];
}

/** What became different from the end of one day to the end of a later one. */
export interface Changes {
  readonly from: IsoDate;
  readonly to: IsoDate;
  /** Positions whose outcome or occupants are others, in catalogue order. */
  readonly positions: readonly { readonly before: RegisterRow; readonly after: RegisterRow }[];
  readonly moved: readonly Moved[];
  readonly decisions: readonly Decision[];
  readonly opened: readonly ItemRow[];
  readonly closed: readonly ItemRow[];
  readonly deferred: readonly ItemRow[];
  readonly bagsFilled: readonly BagRow[];
  readonly bagsEmptied: readonly BagRow[];
  readonly reached: readonly (MilestoneReached & { readonly milestone: MilestoneId })[];
}

/** What changed after the end of day `a`, up to the end of day `b`. */
export function changesBetween(record: RegisterSource, a: IsoDate, b: IsoDate): Changes {
  const within = (date: IsoDate | undefined) => date !== undefined && date > a && date <= b;
  const items = itemsAt(record, b);
  const bags = bagsAt(record, b);
  const after = registerAt(record, b);
  return {
    from: a,
    to: b,
    positions: registerAt(record, a)
      .map((before, index) => ({ before, after: after[index] as RegisterRow }))
      .filter((pair) => pair.before !== pair.after && isOther(pair.before, pair.after)),
    moved: [...record.journal.parts.values()].flatMap((part) => movedBetween(record, part, a, b)),
    decisions: [...record.history.decisions.values()].flat().filter(({ date }) => within(date)),
    opened: items.filter(({ opened }) => within(opened.date)),
    closed: items.filter(({ closed }) => within(closed?.date)),
    deferred: items.filter(({ deferred }) => deferred.some(({ date }) => within(date))),
    bagsFilled: bags.filter(({ filled }) => within(filled.date)),
    bagsEmptied: bags.filter(({ emptied }) => within(emptied?.date)),
    reached: [...record.history.reached.values()].filter(({ date }) => within(date)),
  };
}

function isOther(before: RegisterRow, after: RegisterRow): boolean {
  return before.outcome.words !== after.outcome.words || standing(before) !== standing(after);
}

/** Who stands there, dates left out. */
function standing({ fitted }: RegisterRow): string {
  const counts = new Map<PartId, number>();
  for (const { part, count } of fitted) counts.set(part, (counts.get(part) ?? 0) + count);
  return JSON.stringify([...counts].sort());
}

function movedBetween(record: RegisterSource, { id }: Part, a: IsoDate, b: IsoDate): readonly Moved[] {
  if (!staysOf(record, id).some(({ from }) => from.date > a && from.date <= b)) return [];
  const [before, after] = [whereaboutsAt(record, id, a), whereaboutsAt(record, id, b)];
  return placesKey(before) === placesKey(after) ? [] : [{ part: id, before, after }];
}

function placesKey(places: readonly Whereat[]): string {
  return JSON.stringify(places.map(({ where, count }) => [whereKey(where), count]).sort());
}
