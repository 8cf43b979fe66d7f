import type { GoneHow, IsoDate, PartId, Position, Whereabouts } from '../model.ts';
import type { Moment } from '../record.ts';
import { isHere } from '../replay/words.ts';
import { originAt } from './origins.ts';
import type { RegisterSource } from './source.ts';
import { deedsOf, whereaboutsAt } from './stays.ts';
import { stayedInWords } from './where-now.ts';

/** Where so many of an original that belongs to a position are now. */
export interface OriginalPlace {
  readonly part: PartId;
  readonly count: number;
  /** Which of a numbered lot; null where they cannot be told apart. */
  readonly which: readonly number[] | null;
  readonly where: Whereabouts;
  readonly since: Moment;
  /** With whom it stayed when the vehicle passed on, `with Ruth, where it stayed behind`; null while it is with the keeper. */
  readonly stayed: string | null;
  /** How it went and what the note says of it; null while it is not gone. */
  readonly gone: { readonly how: GoneHow; readonly note: string | null } | null;
}

/** Where every original that belongs to a position is at the end of a day. */
export function originalPlaces(record: RegisterSource, position: Position, date: IsoDate): readonly OriginalPlace[] {
  return position.parts.flatMap((part) => (originAt(record, part, date) === 'original' ? placesOf(record, part, date) : []));
}

function placesOf(record: RegisterSource, part: PartId, date: IsoDate): readonly OriginalPlace[] {
  return whereaboutsAt(record, part, date)
    .filter(({ where }) => isHere(where))
    .map(({ where, count, which, since }) => ({
      part,
      count,
      which,
      where,
      since,
      stayed: stayedInWords(record, part, where, date),
      gone: where.at === 'gone' ? { how: where.how, note: noteOfGoing(record, part, where.how, date) } : null,
    }));
}

/** What the note said when a part went: the last such deed up to the day. */
export function noteOfGoing(record: RegisterSource, part: PartId, how: GoneHow, date: IsoDate): string | null {
  const went = deedsOf(record, part).findLast(
    ({ did, to, date: day }) => did === 'gone' && to.at === 'gone' && to.how === how && day <= date,
  );
  return went?.entry.note ?? null;
}
