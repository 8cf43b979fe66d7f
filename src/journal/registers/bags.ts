import type { BagFilling, IsoDate, PartId } from '../model.ts';
import type { BagHistory, FilledBag, Moment, Stay } from '../record.ts';
import { someInWords, whereKey } from '../replay/words.ts';
import type { Lying } from './hazards.ts';
import { type At, dateOf, groupedBy, perRecord, type RegisterSource } from './source.ts';
import { staysAsOf } from './stays.ts';

/** What a numbered bag holds, or held, as it stood at the end of a day. */
export interface BagRow {
  readonly bag: number;
  readonly filling: BagFilling;
  /** `session` is null for a bag that was full at the start. */
  readonly filled: FilledBag['filled'];
  /** Null while it is filled. */
  readonly emptied: FilledBag['emptied'];
  /** Catalogued parts in it now. */
  readonly parts: readonly { readonly part: PartId; readonly count: number; readonly since: Moment }[];
  /** Catalogued parts that have been in it since it was filled, those in it now included. */
  readonly held: readonly Held[];
  /** What was done under the same number before, newest first. */
  readonly earlier: readonly BagRow[];
}

/** So many of a part in a bag, from when to when; `which` of a numbered lot. */
export interface Held extends Pick<Stay, 'part' | 'count' | 'which' | 'from' | 'to'> {}

/** So many of those of a part that were in a bag. */
export interface LeftBag extends Pick<Stay, 'part' | 'count' | 'which'> {
  readonly of: number;
}

/** The catalogued parts that a bag has in it, each as lying there. */
export function inBag({ bag, parts }: BagRow): readonly Lying[] {
  return parts.map(({ part }) => ({ part, place: whereKey({ at: 'bag', bag }) }));
}

/**
 * Catalogued parts in a bag that its note calls neither by their names nor by their ids.
 *
 * @param called what each is called in what is made; else as a note names it: `u-bolts (2)`
 */
export function unnamedIn({ filling, parts }: BagRow, nameOf: (part: PartId) => string, called = (part: PartId) => part): string[] {
  const told = filling.holds.map((one) => one.toLowerCase());
  const isTold = (words: string): boolean => told.some((one) => one.includes(words));
  return parts
    .filter(({ part }) => ![nameOf(part).toLowerCase(), part, part.replaceAll('-', ' ')].some(isTold))
    .map(({ part, count }) => (count > 1 ? `${called(part)} (${count})` : called(part)));
}

/** Catalogued parts that were in a bag, some or all of which went elsewhere while no note says that it was emptied. */
export function leftBag({ emptied, held }: BagRow): readonly LeftBag[] {
  if (emptied !== null) return [];
  return [...groupedBy(held, ({ part }) => part)].flatMap(([part, all]) => {
    const left = all.filter(({ to }) => to !== null);
    const which = left.flatMap((one) => one.which ?? []).sort((x, y) => x - y);
    return left.length === 0 ? [] : [{ part, count: sumOf(left), of: sumOf(all), which: which.length === 0 ? null : which }];
  });
}

const sumOf = (held: readonly Held[]): number => held.reduce((sum, { count }) => sum + count, 0);

/** What went elsewhere of a part: `Cotter pins`, `Cotter pins (1 of 2, number 2)`. */
export function leftOf({ count, of, which }: LeftBag, name: string): string {
  const some = someInWords(count, of, which);
  return some === '' ? name : `${name} (${some})`;
}

/** Whether a bag that counts as filled has nothing left in it: all that it says it holds is of the catalogue, and went elsewhere. */
export function isLeftEmpty(row: BagRow): boolean {
  const gone = leftBag(row).length;
  return gone > 0 && row.parts.length === 0 && row.filling.holds.length <= gone;
}

/** One phrase on what went elsewhere, in ids as notes have them; none where nothing did. */
export function leftInWords(row: BagRow): string[] {
  const gone = leftBag(row);
  return gone.length === 0
    ? []
    : [`${gone.map((one) => leftOf(one, one.part)).join(', ')} gone elsewhere since${isLeftEmpty(row) ? ', not noted as emptied' : ''}`];
}

const staysByBag = perRecord((record) => {
  const stays = [...record.history.stays.values()].flat();
  return groupedBy(stays, ({ where }: Stay) => (where.at === 'bag' ? where.bag : null));
});

/** Every bag filled by the end of a day, by number, with what it held last. */
export function bagsAt(record: RegisterSource, at: At): readonly BagRow[] {
  const date = dateOf(record, at);
  return bagsByNumber(record).flatMap((bag) => bagRowAt(record, bag, date) ?? []);
}

const bagsByNumber = perRecord((record) => [...record.history.bags.values()].sort((a, b) => a.bag - b.bag));

/** One bag as it stood at the end of a day; null when it was not filled by then. */
export function bagRowAt(record: RegisterSource, { bag, fillings }: BagHistory, date: IsoDate): BagRow | null {
  const rows = fillings.filter(({ filled }) => filled.date <= date).map((one) => fillingRowAt(record, bag, one, date));
  const last = rows.pop();
  return last ? { ...last, earlier: rows.reverse() } : null;
}

/** One filling of a bag as it stood at the end of a day. Parts go into a bag only in the note that fills it. */
export function fillingRowAt(record: RegisterSource, bag: number, { filled, emptied }: FilledBag, date: IsoDate): BagRow {
  const own = (staysByBag(record).get(bag) ?? []).filter(({ from }) => from.session === filled.session);
  const stays = staysAsOf(own, date);
  return {
    bag,
    filling: filled.filling,
    filled: { session: filled.session, date: filled.date, filling: filled.filling },
    emptied: emptied && emptied.date <= date ? emptied : null,
    parts: stays.filter(({ to }) => to === null).map(({ part, count, from }) => ({ part, count, since: from })),
    held: stays.map(({ part, count, which, from, to }) => ({ part, count, which, from, to })),
    earlier: [],
  };
}
