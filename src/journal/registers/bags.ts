import type { BagFilling, IsoDate, PartId, SessionId } from '../model.ts';
import type { BagHistory, Moment, Stay } from '../record.ts';
import { type At, dateOf, groupedBy, perRecord, type RegisterSource } from './source.ts';
import { staysAsOf } from './stays.ts';

/** A numbered bag as it stood at the end of a day. */
export interface BagRow {
  readonly bag: number;
  readonly filling: BagFilling;
  readonly filled: { readonly session: SessionId; readonly date: IsoDate };
  /** Null while it is filled. */
  readonly emptied: { readonly session: SessionId; readonly date: IsoDate } | null;
  /** Catalogued parts in it now. */
  readonly parts: readonly { readonly part: PartId; readonly count: number; readonly since: Moment }[];
  /** Catalogued parts that have been in it, those in it now included. */
  readonly held: readonly { readonly part: PartId; readonly count: number; readonly from: Moment; readonly to: Moment | null }[];
}

const staysByBag = perRecord((record) => {
  const stays = [...record.history.stays.values()].flat();
  return groupedBy(stays, ({ where }: Stay) => (where.at === 'bag' ? where.bag : null));
});

/** Every bag filled by the end of a day, by number. */
export function bagsAt(record: RegisterSource, at: At): readonly BagRow[] {
  const date = dateOf(record, at);
  return bagsByNumber(record)
    .filter(({ filled }) => filled.date <= date)
    .map((bag) => bagRowAt(record, bag, date));
}

const bagsByNumber = perRecord((record) => [...record.history.bags.values()].sort((a, b) => a.bag - b.bag));

/** One bag as it stood at the end of a day. */
export function bagRowAt(record: RegisterSource, { bag, filled, emptied }: BagHistory, date: IsoDate): BagRow {
  const stays = staysAsOf(staysByBag(record).get(bag) ?? [], date);
  return {
    bag,
    filling: filled.filling,
    filled: { session: filled.session, date: filled.date },
    emptied: emptied && emptied.date <= date ? emptied : null,
    parts: stays.filter(({ to }) => to === null).map(({ part, count, from }) => ({ part, count, since: from })),
    held: stays.map(({ part, count, from, to }) => ({ part, count, from, to })),
  };
}
