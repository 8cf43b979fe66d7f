/** The same view as found and as left: which pictures of a position belong beside each other. */
import type { PartId, Picture } from '../../../journal/model.ts';
import type { InSessionPicture } from './chronicle.ts';

export interface ComparedView {
  readonly found: InSessionPicture;
  readonly left: InSessionPicture;
}

/** Of all parts that either picture shows, so many are shown by both; below that it is another view. */
const LEAST_SHARED = 0.5;

/**
 * Pairs the pictures whose `view` is `as-left` with those that are `as-found`: each picture stands in one pair at
 * most, with the one that shares most of what it shows. Of several as good, the earliest as found and the latest as left.
 *
 * @param pictures of a position, oldest first
 * @param positionOf where a part belongs: the part as found and the one that replaced it count as the same thing shown
 * @returns pairs in the order of their as-found pictures
 */
export function comparedViews(pictures: readonly InSessionPicture[], positionOf: (part: PartId) => string): ComparedView[] {
  const founds = pictures.filter(({ picture }) => picture.view === 'as-found');
  const lefts = pictures.filter(({ picture }) => picture.view === 'as-left').reverse();
  const candidates = founds
    .flatMap((found) => lefts.map((left) => ({ found, left, shared: shareOf(found.picture, left.picture, positionOf) })))
    .filter(({ shared }) => shared >= LEAST_SHARED)
    .sort((a, b) => b.shared - a.shared);
  const taken = new Set<InSessionPicture>();
  const pairs = candidates.filter(({ found, left }) => {
    if (taken.has(found) || taken.has(left)) return false;
    taken.add(found).add(left);
    return true;
  });
  return pairs.sort((a, b) => founds.indexOf(a.found) - founds.indexOf(b.found)).map(({ found, left }) => ({ found, left }));
}

function shareOf(a: Picture, b: Picture, positionOf: (part: PartId) => string): number {
  const [one, other] = [new Set(a.shows.map(positionOf)), new Set(b.shows.map(positionOf))];
  const both = [...one].filter((position) => other.has(position)).length;
  return both / (one.size + other.size - both);
}
