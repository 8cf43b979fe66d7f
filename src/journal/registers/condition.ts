import type { Condition, IsoDate, PartId, Whereabouts } from '../model.ts';
import type { Moment } from '../record.ts';
import { isHere, sameWhere } from '../replay/words.ts';
import { numbersSeen, type Observation, observationsOf, observedCount } from './observations.ts';
import type { RegisterSource } from './source.ts';
import { covers, deedsOf, staysOf, type Whereat } from './stays.ts';

/** So many of a part in one condition. */
export interface InCondition {
  readonly condition: Condition;
  /** Null where some are, and nobody wrote down how many of those here. */
  readonly count: number | null;
  /** The days of the notes that say it; null for the catalogue, which tells of the vehicle as it was found. */
  readonly days: readonly (IsoDate | null)[];
}

/** Some of a lot as they were last seen; `where` they were put then, if they still lie there. */
interface Slice {
  readonly condition: Condition | null;
  readonly day: IsoDate | null;
  readonly count: number;
  readonly where: Whereabouts | null;
}

/**
 * The condition, at the end of a day, of those of a part that are at one place. What was written down of some of a lot
 * is said of so many, never of the others: of a numbered lot of those named, else of those that the entry put there,
 * else of any that it may have been.
 */
export function conditionsAt(
  record: RegisterSource,
  part: PartId,
  { where, count, which }: Omit<Whereat, 'since' | 'last'>,
  date: IsoDate,
): readonly InCondition[] {
  if (which !== null) return told(which.map((number) => ({ ...conditionOf(record, part, number, date), count: 1, where })));
  const slices = slicesOf(record, part, date);
  const own = slices.filter((slice) => slice.where !== null && sameWhere(slice.where, where));
  const rest = slices.filter((slice) => slice.where === null);
  const left = count - sumOf(own);
  if (left <= 0) return told(own);
  const kinds = new Set(rest.map(({ condition }) => condition));
  if (sumOf(rest) === left) return told([...own, ...rest]);
  if (kinds.size === 1) return told([...own, ...rest.map((slice, n) => ({ ...slice, count: n === 0 ? left : 0 }))]);
  return [...told(own), ...told(rest).map((either) => ({ ...either, count: null }))];
}

/** `3`; `1 (2 of 3), 3 (1 of 3)`; `0 or 2` where nobody wrote down which; null for nothing written down. */
export function conditionInWords(conditions: readonly InCondition[], count: number): string | null {
  const [first] = conditions;
  if (!first) return null;
  if (conditions.length === 1 && (first.count ?? 0) >= count) return String(first.condition);
  const told = conditions.filter((one) => one.count !== null).map((one) => `${one.condition} (${one.count} of ${count})`);
  const either = conditions.filter((one) => one.count === null).map(({ condition }) => condition);
  const perhaps = either.length === 1 ? `perhaps ${either[0]}` : either.join(' or ');
  return [...told, ...(either.length > 0 ? [perhaps] : [])].join(', ');
}

/**
 * Of which days some conditions of a part are told, the first first, each day once: of a note the day of that, of the
 * catalogue the day from which the part was here.
 */
export function conditionDays(record: RegisterSource, part: PartId, conditions: readonly InCondition[]): readonly Moment[] {
  const days = [...new Set(conditions.flatMap((one) => one.days))];
  const seen = days.filter((day) => day !== null).map((date) => ({ date, session: sessionSeeing(record, part, date) }));
  const came = days.includes(null) ? [cameOf(record, part)] : [];
  return [...came, ...seen].sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
}

function sessionSeeing(record: RegisterSource, part: PartId, date: IsoDate): string | null {
  return observationsOf(record, part).findLast((one) => one.entry.condition !== null && one.date === date)?.session ?? null;
}

function cameOf(record: RegisterSource, part: PartId): Moment {
  const first = staysOf(record, part).find(({ where }) => isHere(where));
  return first?.from ?? { date: record.journal.settings.arrived, session: null };
}

/** One of a numbered lot as it was last seen: by an entry that names it, or one that means all. */
function conditionOf(record: RegisterSource, part: PartId, number: number, date: IsoDate): Pick<Slice, 'condition' | 'day'> {
  const seen = observationsOf(record, part).findLast(
    (one) => one.entry.condition !== null && one.date <= date && (numbersSeen(record, one)?.includes(number) ?? one.entry.count === null),
  );
  if (seen) return { condition: seen.entry.condition, day: seen.date };
  return { condition: record.journal.parts.get(part)?.condition ?? null, day: null };
}

function slicesOf(record: RegisterSource, part: PartId, date: IsoDate): readonly Slice[] {
  const { count: all = 1, condition: asFound = null } = record.journal.parts.get(part) ?? {};
  const slices: Slice[] = [];
  let left = all;
  for (const seen of observationsOf(record, part).toReversed()) {
    if (left === 0) break;
    if (seen.entry.condition === null || seen.date > date) continue;
    const count = Math.min(left, observedCount(record, seen, all));
    slices.push({ condition: seen.entry.condition, day: seen.date, count, where: count < all ? putThere(record, seen, date) : null });
    left -= count;
  }
  return left > 0 ? [...slices, { condition: asFound, day: null, count: left, where: null }] : slices;
}

/** Where the entry put what it saw, while what came there then still lies there. */
function putThere(record: RegisterSource, { part, entry, session }: Observation, date: IsoDate): Whereabouts | null {
  const last = deedsOf(record, part).findLast((deed) => deed.entry === entry && !sameWhere(deed.from, deed.to));
  if (!last) return null;
  const lies = staysOf(record, part).some((stay) => stay.from.session === session && sameWhere(stay.where, last.to) && covers(stay, date));
  return lies ? last.to : null;
}

function told(slices: readonly Slice[]): readonly InCondition[] {
  const alike = Map.groupBy(slices, ({ condition }) => condition);
  return [...alike].flatMap(([condition, some]) =>
    condition === null ? [] : [{ condition, count: sumOf(some), days: [...new Set(some.map(({ day }) => day))] }],
  );
}

function sumOf(slices: readonly Slice[]): number {
  return slices.reduce((sum, { count }) => sum + count, 0);
}
