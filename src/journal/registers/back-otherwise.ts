import type { IsoDate, PartId, Position } from '../model.ts';
import type { Deed, Moment } from '../record.ts';
import { someInWords } from '../replay/words.ts';
import type { RegisterSource } from './source.ts';
import { deedsOf, type Whereat, whereaboutsAt } from './stays.ts';

/** So many of what stands at a position that a note put there otherwise than they had come off (`as-was: no`). */
export interface BackOtherwise {
  readonly part: PartId;
  readonly count: number;
  /** Which of a numbered lot; null where they cannot be told apart. */
  readonly which: readonly number[] | null;
  readonly fitted: Moment;
  /** `went back otherwise than they came off (2 of 5): Flat side up` */
  readonly words: string;
}

/**
 * What stands at a position otherwise than it came off, at the end of a day, newest first. What a note says of how a part
 * went back holds until one says it anew. Of a lot that is only counted, what several notes say is taken to be of others
 * each time, as far as they go round.
 */
export function backOtherwiseAt(
  record: RegisterSource,
  position: Position,
  standing: readonly { readonly part: PartId }[],
  date: IsoDate,
): readonly BackOtherwise[] {
  return [...new Set(standing.map(({ part }) => part))].flatMap((part) => {
    const places = whereaboutsAt(record, part, date).filter(({ where }) => isAt(where, position));
    const said = deedsOf(record, part).filter((deed) => isSaid(deed, position, date));
    return laid(said, places).flatMap((one) => (one.deed.entry.asWas === false ? [otherwiseOf(position, one)] : []));
  });
}

const isAt = (where: Whereat['where'], { id }: Position): boolean => (where.at === 'fitted' || where.at === 'in') && where.position === id;

const isSaid = ({ did, entry, position, date }: Deed, { id }: Position, until: IsoDate): boolean =>
  did === 'fitted' && entry.asWas !== null && position === id && date <= until;

interface Laid {
  readonly deed: Deed;
  readonly count: number;
  readonly which: readonly number[] | null;
}

/** What was said, the newest first, each of what no later one speaks of; together of as many as stand there. */
function laid(said: readonly Deed[], places: readonly Whereat[]): readonly Laid[] {
  const there = new Set(places.flatMap(({ which }) => which ?? []));
  let left = places.reduce((sum, { count }) => sum + count, 0);
  return said.toReversed().flatMap((deed) => {
    const which = deed.which?.filter((number) => there.delete(number)) ?? null;
    const count = Math.min(which?.length ?? deed.count, left);
    left -= count;
    return count > 0 ? [{ deed, count, which }] : [];
  });
}

function otherwiseOf({ id, count: places }: Position, { deed, count, which }: Laid): BackOtherwise {
  const { part, date, session, entry } = deed;
  const some = count < places ? ` (${someInWords(count, places, which)})` : '';
  const how = part === id ? `went back otherwise than ${places > 1 ? 'they' : 'it'} came off` : 'went on otherwise than what came off';
  return { part, count, which, fitted: { date, session }, words: `${how}${some}: ${entry.note ?? 'nobody said how'}` };
}
