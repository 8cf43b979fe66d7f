import type { Decision, IsoDate, PartId } from '../model.ts';
import type { ItemHistory, MilestoneReached } from '../record.ts';
import { whereKey } from '../replay/words.ts';
import { type BagRow, fillingRowAt } from './bags.ts';
import { Dated } from './dated.ts';
import { type ItemRow, itemRowAt } from './open-items.ts';
import { type RegisterRow, registerAt } from './register.ts';
import { perRecord, type RegisterSource } from './source.ts';
import { type Whereat, whereaboutsAt } from './stays.ts';

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
  /** By id. */
  readonly moved: readonly Moved[];
  readonly decisions: readonly Decision[];
  readonly opened: readonly ItemRow[];
  readonly closed: readonly ItemRow[];
  readonly deferred: readonly ItemRow[];
  readonly bagsFilled: readonly BagRow[];
  readonly bagsEmptied: readonly BagRow[];
  readonly reached: readonly MilestoneReached[];
}

/** What happened on which day, of the things that a change is made of. */
const happenings = perRecord((record) => {
  const { stays, decisions, items, bags, reached } = record.history;
  const all = [...items.values()];
  const deferred = all.flatMap((item) => item.deferred.map(({ date }) => ({ item, date })));
  const closed = all.flatMap((item) => (item.closed ? [{ item, date: item.closed.date }] : []));
  const fillings = [...bags.values()].flatMap(({ bag, fillings: all }) => all.map((filling) => ({ bag, filling })));
  const emptied = fillings.flatMap((one) => (one.filling.emptied ? [{ ...one, date: one.filling.emptied.date }] : []));
  return {
    begun: new Dated([...stays.values()].flat(), ({ from }) => from.date),
    decided: new Dated([...decisions.values()].flat(), ({ date }) => date),
    opened: new Dated(all, ({ opened }) => opened.date),
    deferred: new Dated(deferred, ({ date }) => date),
    closed: new Dated(closed, ({ date }) => date),
    filled: new Dated(fillings, ({ filling }) => filling.filled.date),
    emptied: new Dated(emptied, ({ date }) => date),
    reached: new Dated([...reached.values()], ({ date }) => date),
  };
});

/** What changed after the end of day `a`, up to the end of day `b`. */
export function changesBetween(record: RegisterSource, a: IsoDate, b: IsoDate): Changes {
  const days = happenings(record);
  const after = registerAt(record, b);
  const row = (item: ItemHistory) => itemRowAt(item, b);
  const moving = new Set(days.begun.within(a, b).map(({ part }) => part));
  return {
    from: a,
    to: b,
    positions: registerAt(record, a)
      .map((before, index) => ({ before, after: after[index] as RegisterRow }))
      .filter((pair) => pair.before !== pair.after && isOther(pair.before, pair.after)),
    moved: [...moving].sort().flatMap((part) => movedBetween(record, part, a, b)),
    decisions: days.decided.within(a, b),
    opened: days.opened.within(a, b).map(row),
    closed: days.closed.within(a, b).map(({ item }) => row(item)),
    deferred: [...new Set(days.deferred.within(a, b).map(({ item }) => item))].map(row),
    bagsFilled: days.filled.within(a, b).map(({ bag, filling }) => fillingRowAt(record, bag, filling, b)),
    bagsEmptied: days.emptied.within(a, b).map(({ bag, filling }) => fillingRowAt(record, bag, filling, b)),
    reached: days.reached.within(a, b),
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

function movedBetween(record: RegisterSource, part: PartId, a: IsoDate, b: IsoDate): readonly Moved[] {
  const [before, after] = [whereaboutsAt(record, part, a), whereaboutsAt(record, part, b)];
  return placesKey(before) === placesKey(after) ? [] : [{ part, before, after }];
}

function placesKey(places: readonly Whereat[]): string {
  return JSON.stringify(places.map(({ where, count }) => [whereKey(where), count]).sort());
}
