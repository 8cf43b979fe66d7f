/**
 * How wide a picture is set on a page, as the attribute `sizes` has it. On a narrow page of many dots to a pixel
 * the width is said to be less than it is: with more than some two dots to a pixel nobody sees more, and the bytes
 * double. A telephone up to 430 pixels wide then takes the rendering of 640 for a picture as wide as the page, and
 * that of 320 for one of two in a row.
 */
const NARROW = '(max-width: 40rem)';
const FINE = `${NARROW} and (min-resolution: 1.5dppx)`;
const FINEST = `${NARROW} and (min-resolution: 2.5dppx)`;

/**
 * @param inRow how many pictures stand in a row of a narrow page
 * @param wide how wide each is on a wide one
 */
export function shownWidths(inRow: 1 | 2, wide: string): string {
  const share = (of: number): string => `${Math.round((92 * of) / inRow)}vw`;
  return `${FINEST} ${share(0.53)}, ${FINE} ${share(0.8)}, ${NARROW} ${share(1)}, ${wide}`;
}

/** In the prose of a note: all of a narrow page, else its column. */
export const PROSE_WIDTHS = shownWidths(1, '(min-width: 60rem) 46rem, 100vw');

/** The picture of a bag in the prose of a note: enough to know the bag by. */
export const BAG_WIDTHS = shownWidths(1, '24rem');
