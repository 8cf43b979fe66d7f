/** Of which places somebody wrote down what condition the part was in that was found there, and whether before it was worked on. */
import type { IsoDate, PartId } from '../model.ts';
import type { Deed } from '../record.ts';
import { type Observation, observationsOf } from './observations.ts';
import type { RegisterSource } from './source.ts';
import { compareMoments, deedsOf, orderedSessions } from './stays.ts';
import { workOf } from './work-done.ts';

/** `before` any work on it, only `after` some was begun, or never. */
export type Classed = 'before' | 'after' | 'never';

/**
 * What the catalogue says is of the vehicle as it was found. A class in the entry that tells of work is not taken to be
 * older than that work, since nobody said so.
 */
export function classedOf(record: RegisterSource, part: PartId, date: IsoDate): Classed {
  if ((record.journal.parts.get(part)?.condition ?? null) !== null) return 'before';
  const classed = observationsOf(record, part).filter((seen) => seen.entry.condition !== null && seen.date <= date);
  const first = classed[0];
  if (first === undefined) return 'never';
  const worked = deedsOf(record, part).find((deed) => deed.did === 'cleaned' || workOf(record, deed) !== null);
  return worked === undefined || isEarlier(record, first, worked) ? 'before' : 'after';
}

function isEarlier(record: RegisterSource, seen: Observation, worked: Deed): boolean {
  const apart = compareMoments(record)(seen, worked);
  if (apart !== 0) return apart < 0;
  const entries = orderedSessions(record).find(({ id }) => id === seen.session)?.parts ?? [];
  return entries.indexOf(seen.entry) < entries.indexOf(worked.entry);
}
