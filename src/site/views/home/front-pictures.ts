/** The pictures of the front page: the chosen one, and the vehicle as it arrived beside what it is now. */
import type { PictureOfSession } from '../page/long-lists.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { headPicture } from '../pictures/pictures.ts';
import { positionsShown, shownViews } from '../pictures/plates.ts';
import type { ComparedView } from '../position/compared.ts';

export interface FrontPictures {
  /** Null where there is none, or where it is the one that shows the vehicle now. */
  readonly chosen: PictureOfSession | null;
  /** The whole vehicle as found and as left; null where no such pair was taken. */
  readonly whole: ComparedView | null;
}

/** Pictures that have so many positions in common show the whole vehicle, as far as pictures do. */
const WHOLE = 4;

/** @param listed how many of the last sessions stand on the page with pictures of their own */
export function frontPictures(sheet: RecordSheet, listed: number): FrontPictures {
  const chosen = headPicture(sheet, listed);
  const whole = wholeOf(sheet, chosen);
  return { chosen: chosen !== null && chosen.picture.file === whole?.left.picture.file ? null : chosen, whole };
}

/** With the chosen picture where a view as found goes with it; else those with most in common, of several the first as found and the last as left. */
function wholeOf({ record }: RecordSheet, chosen: PictureOfSession | null): ComparedView | null {
  const { found: founds, left } = shownViews(record);
  const lefts = left.toReversed();
  const pairs = [lefts.filter(({ picture }) => picture.file === chosen?.picture.file), lefts].map((some) =>
    founds.flatMap((found) => some.map((one) => ({ found, left: one, shared: sharedBy(record, found, one) }))),
  );
  const best = pairs.map((list) => list.toSorted((a, b) => b.shared - a.shared)[0]).find((one) => one !== undefined && one.shared >= WHOLE);
  return best === undefined ? null : { found: best.found, left: best.left };
}

function sharedBy(record: RecordSheet['record'], a: PictureOfSession, b: PictureOfSession): number {
  const others = positionsShown(record, b);
  return [...positionsShown(record, a)].filter((position) => others.has(position)).length;
}
