import type { IsoDate } from '../../model.ts';
import type { Deed } from '../../record.ts';
import { compareText } from '../../values/text-order.ts';
import { type BagRow, bagsAt, isLeftEmpty, leftBag } from '../bags.ts';
import type { RegisterSource } from '../source.ts';
import { deedsOf, whereaboutsAt } from '../stays.ts';
import { missingFromBags } from './fasteners.ts';
import type { Missed } from './forgotten.ts';
import { listItem } from './list-item.ts';

/** Fasteners that came off and that no bag holds. */
export function fastenersMissing(record: RegisterSource, date: IsoDate): Missed[] {
  return missingFromBags(record, date).map(({ row, words, add }) => ({
    about: { bag: row.bag },
    lacks: words,
    at: row.filled,
    place: row.filling.place,
    write: `holds: [${[...row.filling.holds, add].map(listItem).join(', ')}]`,
  }));
}

/** Bags that count as filled though all that was in them is back on the vehicle, or went elsewhere. */
export function bagsNeverEmptied(record: RegisterSource, date: IsoDate): Missed[] {
  return bagsAt(record, date).flatMap((row) => {
    if (row.emptied !== null || row.parts.length > 0) return [];
    const back = wentBack(record, row, date);
    const last = back ?? wentElsewhere(record, row, date);
    if (last === null) return [];
    const lacks = `counts as filled: ${back ? 'what came off is back' : 'all that was in it went elsewhere'}, and no note says that the bag was emptied`;
    return [{ about: { bag: row.bag }, lacks, at: last, place: last.entry.place, write: `emptied: [${row.bag}]` }];
  });
}

/** The last deed that took catalogued parts out of a bag; null where it says that it holds something else besides. */
function wentElsewhere(record: RegisterSource, row: BagRow, date: IsoDate): Deed | null {
  if (!isLeftEmpty(row)) return null;
  const { bag, filled } = row;
  const out = leftBag(row)
    .flatMap(({ part }) => deedsOf(record, part))
    .filter(({ from, date: day }) => from.at === 'bag' && from.bag === bag && day >= filled.date && day <= date);
  return out.sort((a, b) => compareText(a.date, b.date)).at(-1) ?? null;
}

/** The last deed by which what was in a bag, or what it came off, went on again; null where some of it is still off. */
function wentBack(record: RegisterSource, row: BagRow, date: IsoDate): Deed | null {
  const { off } = row.filling;
  const about = [...new Set([...row.held.map(({ part }) => part), ...(off === null ? [] : [off])])];
  const isOff = about.some((part) => whereaboutsAt(record, part, date).some(({ where }) => where.at !== 'fitted' && where.at !== 'in'));
  if (about.length === 0 || isOff) return null;
  const fitted = about.flatMap((part) => deedsOf(record, part).filter((deed) => deed.did === 'fitted' && deed.date <= date));
  return (
    fitted
      .filter((deed) => deed.date >= row.filled.date)
      .sort((a, b) => (a.date < b.date ? -1 : 1))
      .at(-1) ?? null
  );
}
