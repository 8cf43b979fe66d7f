import type { PartId } from '../../../journal/model.ts';
import { unsafePlaces } from '../../../journal/registers/made-safe.ts';
import { whereaboutsAt } from '../../../journal/registers/stays.ts';
import { stayedInWords } from '../../../journal/registers/where-now.ts';
import { someInWords } from '../../../journal/replay/words.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { placeNowWords } from '../stores/where.ts';

/**
 * Of a part of which some was made safe, how many may still be dangerous, and where: `2 of 4: bag 14`. Null where that is
 * all of what is here, or none.
 */
export function stillDangerous(sheet: RecordSheet, id: PartId): string | null {
  const { record } = sheet;
  const unsafe = unsafePlaces(record, id, record.day);
  const here = whereaboutsAt(record, id, record.day).filter(({ where }) => HERE.has(where.at));
  const [some, all] = [unsafe, here].map((places) => places.reduce((sum, { count }) => sum + count, 0));
  if (some === 0 || some === all) return null;
  const { count: of = 1 } = record.journal.parts.get(id) ?? {};
  return unsafe
    .map(
      ({ where, count, which }) =>
        `${someInWords(count, of, which)}: ${placeNowWords(sheet, where, stayedInWords(record, id, where, null))}`,
    )
    .join('; ');
}

const HERE: ReadonlySet<string> = new Set(['fitted', 'in', 'stores', 'bag', 'out']);

/** Those of some parts of which it can be said, each with its words. */
export function stillDangerousOf(sheet: RecordSheet, parts: Iterable<PartId>): ReadonlyMap<PartId, string> {
  const told = [...new Set(parts)].map((id) => [id, stillDangerous(sheet, id)] as const);
  return new Map(told.flatMap(([id, words]) => (words === null ? [] : [[id, words]])));
}
