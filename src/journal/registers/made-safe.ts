import type { IsoDate, PartId } from '../model.ts';
import type { Deed, Stay } from '../record.ts';
import { isHere, whereKey } from '../replay/words.ts';
import type { RegisterSource } from './source.ts';
import { covers, deedsOf, staysOf, type Whereat, whereaboutsAt } from './stays.ts';

/** So many of a part at one place that may still be dangerous. */
export type Unsafe = Pick<Whereat, 'where' | 'count' | 'which'>;

/**
 * Where a part is here at the end of a day, without what was surely made safe by then. What is said of some of a lot is
 * said of that many: of pieces that can be told apart, of those that were named; of others, of those that the entry brought
 * to where they lie, or that lay where it was done and lie there still. Where others might be meant, they are not safe.
 */
export function unsafePlaces(record: RegisterSource, part: PartId, date: IsoDate): readonly Unsafe[] {
  const here = whereaboutsAt(record, part, date).filter(({ where }) => isHere(where) && where.at !== 'gone' && where.at !== 'missing');
  const deeds = madeSafe(record, part, date);
  if (deeds.length === 0) return here;
  if (isWhollySafe(record, part, deeds)) return [];
  const named = new Set(deeds.flatMap(({ which }) => which ?? []));
  return here.flatMap((place) => {
    const which = place.which?.filter((number) => !named.has(number)) ?? null;
    const count = which?.length ?? place.count - safeAt(record, part, whereKey(place.where), deeds, date);
    return count > 0 ? [{ where: place.where, count, which }] : [];
  });
}

/** As many as there are of a lot that is only counted, whichever of them were meant each time. */
function isWhollySafe(record: RegisterSource, part: PartId, deeds: readonly Deed[]): boolean {
  const { count = 1, numbered = null } = record.journal.parts.get(part) ?? {};
  if (deeds.some((deed) => deed.count >= count)) return true;
  return numbered === null && safeByPlace(record, part, deeds) >= count;
}

/** How many of what lies at one place are surely safe: as it came, or where it lies. */
function safeAt(record: RegisterSource, part: PartId, place: string, deeds: readonly Deed[], date: IsoDate): number {
  const stays = staysOf(record, part).filter((stay) => whereKey(stay.where) === place && stay.from.date <= date);
  const lying = stays.filter((stay) => covers(stay, date));
  const cameSafe = (stay: Stay) => deeds.some((deed) => broughtSafe(deed, stay));
  // What went since from among others might have been what came safe.
  const others = stays.filter((stay) => !cameSafe(stay));
  const mayHaveGone = (came: Stay) => others.some(({ to }) => to !== null && to.date >= came.from.date && to.date <= date);
  const asItCame = sumOf(lying.filter((stay) => cameSafe(stay) && !mayHaveGone(stay)));
  return Math.min(sumOf(lying), Math.max(asItCame, safeWhereItLies(stays, deeds, place, date)));
}

/** The whole of what came so was made safe as it came. */
function broughtSafe({ session, date, count, to }: Deed, { from, where, count: came }: Stay): boolean {
  return session === from.session && date === from.date && whereKey(to) === whereKey(where) && count >= came;
}

/** What was done to so many where they lie, while none came and none went. Those that went since might all have been safe ones. */
function safeWhereItLies(stays: readonly Stay[], deeds: readonly Deed[], place: string, date: IsoDate): number {
  const there = deeds.filter(({ from, to }) => whereKey(from) === place && whereKey(to) === place);
  const [first, last] = [there[0]?.date ?? '', there.at(-1)?.date ?? ''];
  const left = stays.filter(({ to }) => to !== null && to.date >= first && to.date <= date);
  if (stays.some(({ from }) => from.date >= first) || left.some(({ to }) => (to?.date ?? '') <= last)) return 0;
  const lying = sumOf(stays.filter((stay) => covers(stay, date)));
  const notDone = Math.max(0, lying + sumOf(left) - sumOf(there));
  return Math.max(0, lying - notDone);
}

function sumOf(some: readonly { readonly count: number }[]): number {
  return some.reduce((all, { count }) => all + count, 0);
}

/** An entry of several actions is one. */
function madeSafe(record: RegisterSource, part: PartId, date: IsoDate): readonly Deed[] {
  const deeds = deedsOf(record, part).filter((deed) => deed.entry.how === 'made-safe' && deed.date <= date);
  return [...new Map(deeds.map((deed) => [deed.entry, deed])).values()];
}

function safeByPlace(record: RegisterSource, part: PartId, deeds: readonly Deed[]): number {
  const places = [...Map.groupBy(deeds, ({ from }) => whereKey(from)).values()].map((there) => {
    const lay = Math.max(...there.map(({ from, date }) => countAt(record, part, whereKey(from), date)));
    return Math.min(
      lay,
      there.reduce((sum, { count }) => sum + count, 0),
    );
  });
  return movedBetween(record, part, deeds) ? Math.max(...places) : places.reduce((sum, count) => sum + count, 0);
}

function countAt(record: RegisterSource, part: PartId, place: string, date: IsoDate): number {
  return staysOf(record, part)
    .filter(({ where, from, to }) => whereKey(where) === place && from.date <= date && (to === null || to.date >= date))
    .reduce((sum, { count }) => sum + count, 0);
}

function movedBetween(record: RegisterSource, part: PartId, deeds: readonly Deed[]): boolean {
  const [first, last] = [deeds[0]?.date ?? '', deeds.at(-1)?.date ?? ''];
  return staysOf(record, part).some(({ from }) => from.date > first && from.date <= last);
}
