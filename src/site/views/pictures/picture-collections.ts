/**
 * All pictures in collections: one of all by date, and one for each subsystem. A collection is one page while it is short; a
 * longer one has a page for each year, a year that is too long one for each month, and a month that is too long several.
 */

import { GENERAL, type SubsystemId } from '../../../journal/model.ts';
import { monthOf, yearOf } from '../../../journal/values/date.ts';
import { once } from '../../../journal/values/once.ts';
import type { Address } from '../../addresses.ts';
import { PAGES } from '../../addresses.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import type { SiteRecord } from '../../record.ts';
import { allPictures, PICTURES_A_PAGE, type PictureOfSession } from '../page/long-lists.ts';
import type { Sheet } from '../page/sheet.ts';

export interface PictureLeaf {
  /** `2024`, `2024-09`, `2024-09-2`; '' when the collection has one page. */
  readonly name: string;
  readonly address: Address;
  /** Newest first. */
  readonly pictures: readonly PictureOfSession[];
}

export interface PictureCollection {
  /** Null for the collection of all. `general` for pictures that show no part. */
  readonly subsystem: SubsystemId | null;
  readonly count: number;
  /** Where the collection opens: at its last pictures. */
  readonly address: Address;
  /** Newest first; none when there is no picture. The first has the address of the collection itself. */
  readonly leaves: readonly PictureLeaf[];
}

/** All that one page of a collection shows, but for names. */
export interface CollectionPage {
  readonly collection: Pick<PictureCollection, 'subsystem' | 'count'>;
  /** Every collection there is. */
  readonly collections: readonly Pick<PictureCollection, 'subsystem' | 'count' | 'address'>[];
  /** Every page of this one, the newest first. */
  readonly leaves: readonly (Pick<PictureLeaf, 'name' | 'address'> & { readonly count: number })[];
  /** Which of them it is; nought where there is no picture. */
  readonly place: number;
  readonly pictures: readonly PictureOfSession[];
}

const PAGE = shown('page of pictures', ({ record }, address: Address): CollectionPage => {
  const all = pictureCollections({ record });
  const found = all.flatMap((collection) => [
    ...(collection.address === address ? [{ collection, place: 0 }] : []),
    ...collection.leaves.flatMap((leaf, place) => (leaf.address === address ? [{ collection, place }] : [])),
  ])[0];
  if (found === undefined) throw new RangeError(`there is no page of pictures ${address}`);
  const { collection, place } = found;
  return {
    collection: { subsystem: collection.subsystem, count: collection.count },
    collections: all.map(({ subsystem, count, address: to }) => ({ subsystem, count, address: to })),
    leaves: collection.leaves.map(({ name, address: to, pictures }) => ({ name, address: to, count: pictures.length })),
    place,
    pictures: collection.leaves[place]?.pictures ?? [],
  };
});

export const COLLECTION_QUESTIONS: readonly AnyQuestion[] = [PAGE];

/** @throws RangeError where no collection has a page there */
export const collectionPage = (sheet: Sheet): CollectionPage => sheet.ask(PAGE, sheet.address);

/** The collection of all first, then those of the subsystems that have pictures, in the journal's order. */
export const pictureCollections: (of: { readonly record: SiteRecord }) => readonly PictureCollection[] = once(
  ({ record }) => collectionsOf(record),
  ({ record }) => record.journal,
);

function collectionsOf(record: SiteRecord): PictureCollection[] {
  const all = allPictures(record);
  const { parts, subsystems } = record.journal;
  const shownBy = ({ picture }: PictureOfSession): Set<SubsystemId> => {
    const shown = picture.shows.flatMap((part) => parts.get(part)?.subsystem ?? []);
    return new Set(shown.length > 0 ? shown : [GENERAL]);
  };
  const ids = [...subsystems.keys(), ...(subsystems.has(GENERAL) ? [] : [GENERAL])];
  const bySubsystem = new Map<SubsystemId, PictureOfSession[]>(ids.map((id) => [id, []]));
  for (const one of all) for (const id of shownBy(one)) bySubsystem.get(id)?.push(one);
  const ofSubsystems = [...bySubsystem].filter(([, pictures]) => pictures.length > 0);
  return [collectionOf(null, all), ...ofSubsystems.map(([id, pictures]) => collectionOf(id, pictures))];
}

function collectionOf(subsystem: SubsystemId | null, pictures: readonly PictureOfSession[]): PictureCollection {
  const address = subsystem === null ? PAGES.pictures : `pictures-of/${subsystem}.html`;
  const folder = subsystem === null ? 'pictures-by-date' : `pictures-of/${subsystem}`;
  const leaves = leavesOf(pictures, PICTURES_A_PAGE).map((leaf, n) => ({
    ...leaf,
    address: n === 0 ? address : `${folder}/${leaf.name}.html`,
  }));
  return { subsystem, count: pictures.length, address, leaves };
}

type Leaf = Omit<PictureLeaf, 'address'>;

/**
 * @param pictures oldest first
 * @param most how many one page may hold
 * @returns newest first
 */
export function leavesOf(pictures: readonly PictureOfSession[], most: number): Leaf[] {
  const newestFirst = pictures.toReversed();
  if (newestFirst.length === 0) return [];
  if (newestFirst.length <= most) return [{ name: '', pictures: newestFirst }];
  return [...Map.groupBy(newestFirst, ({ session }) => yearOf(session.date))].flatMap(([year, ofYear]) =>
    ofYear.length <= most ? [{ name: year, pictures: ofYear }] : leavesOfMonths(ofYear, most),
  );
}

function leavesOfMonths(pictures: readonly PictureOfSession[], most: number): Leaf[] {
  return [...Map.groupBy(pictures, ({ session }) => monthOf(session.date))].flatMap(([month, ofMonth]) => {
    if (ofMonth.length <= most) return [{ name: month, pictures: ofMonth }];
    // Numbered from the oldest, so that a full page keeps its address when more are taken that month.
    const oldestFirst = ofMonth.toReversed();
    const many = Math.ceil(oldestFirst.length / most);
    const parts = Array.from({ length: many }, (_, n) => oldestFirst.slice(n * most, (n + 1) * most).reverse());
    return parts.map((part, n) => ({ name: `${month}-${n + 1}`, pictures: part })).reverse();
  });
}
