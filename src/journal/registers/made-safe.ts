import type { IsoDate, PartId } from '../model.ts';
import type { Deed, Stay } from '../record.ts';
import { isHere, whereKey } from '../replay/words.ts';
import type { RegisterSource } from './source.ts';
import { covers, deedsOf, staysOf, whereaboutsAt } from './stays.ts';

/**
 * True when all of a part that is here was made safe by the end of a day. What is said of some of a lot is said of that
 * many: of pieces that can be told apart, of those that were named; of others, of no more than lay where it was done, and
 * of no others where some were moved in between, so that the same ones may have been meant twice.
 */
export function isMadeSafe(record: RegisterSource, part: PartId, date: IsoDate): boolean {
  const deeds = madeSafe(record, part, date);
  if (deeds.length === 0) return false;
  const all = record.journal.parts.get(part)?.count ?? 1;
  if (deeds.some(({ count }) => count >= all)) return true;
  const here = whereaboutsAt(record, part, date).filter(({ where }) => isHere(where) && where.at !== 'gone');
  const named = new Set(deeds.flatMap(({ which }) => which ?? []));
  if (here.every(({ which }) => which !== null)) return here.every(({ which }) => which?.every((number) => named.has(number)));
  return safeByPlace(record, part, deeds) >= all;
}

/**
 * True when all of a part that lies at one place was surely made safe by the end of a day: each of its pieces by the entry
 * that brought it there, or where it lies since the last of them came. Where others of the lot might be meant, it is not.
 *
 * @param place see `whereKey`
 */
export function isMadeSafeThere(record: RegisterSource, part: PartId, place: string, date: IsoDate): boolean {
  const deeds = madeSafe(record, part, date);
  if (deeds.length === 0) return false;
  const lying = staysOf(record, part).filter((stay) => whereKey(stay.where) === place && covers(stay, date));
  const named = new Set(deeds.flatMap(({ which }) => which ?? []));
  if (lying.every(({ which }) => which !== null)) return lying.every(({ which }) => which?.every((number) => named.has(number)));
  return lying.every((stay) => deeds.some((deed) => broughtSafe(deed, stay))) || safeWhereItLies(record, part, deeds, lying);
}

/** The whole of what came so was made safe as it came. */
function broughtSafe({ session, date, count, to }: Deed, { from, where, count: came }: Stay): boolean {
  return session === from.session && date === from.date && whereKey(to) === whereKey(where) && count >= came;
}

/** What was done to as many as lie there, while none came and none went. */
function safeWhereItLies(record: RegisterSource, part: PartId, deeds: readonly Deed[], lying: readonly Stay[]): boolean {
  const place = whereKey(lying[0]?.where ?? { at: 'missing' });
  const there = deeds.filter(({ from, to }) => whereKey(from) === place && whereKey(to) === place);
  const [first, last] = [there[0]?.date ?? '', there.at(-1)?.date ?? ''];
  const moved = staysOf(record, part)
    .filter(({ where }) => whereKey(where) === place)
    .some(({ from, to }) => from.date >= first || (to !== null && to.date >= first && to.date <= last));
  const sum = (some: readonly { readonly count: number }[]): number => some.reduce((all, { count }) => all + count, 0);
  return !moved && sum(there) >= sum(lying);
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
