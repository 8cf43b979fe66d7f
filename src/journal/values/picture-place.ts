import { bad, ok, quoted, type Reading } from './reading.ts';

/** A place in a picture, in per cent of its width and height from the upper left corner; without a size it is a point. */
export interface PicturePlace {
  readonly x: number;
  readonly y: number;
  readonly width: number | null;
  readonly height: number | null;
}

const FORM = 'Write `x,y` or `x,y,w,h` in per cent from the upper left corner: `12,40,18,22`.';
const NUMBER = /^\d{1,3}(?:\.\d{1,3})?$/;

/**
 * Reads `12,40` or `12,40,18,22`: `x,y` or `x,y,w,h` in per cent.
 * Source: W3C Media Fragments URI 1.0, section 4.2.2, the spatial dimension; whole numbers there, decimals here too.
 */
export function readPicturePlace(text: string): Reading<PicturePlace> {
  const numbers = text
    .replace(/^xywh=percent:/, '')
    .split(',')
    .map((one) => one.trim());
  if ((numbers.length !== 2 && numbers.length !== 4) || !numbers.every((one) => NUMBER.test(one))) {
    return bad('A915', `${quoted(text)} is not a place in a picture.`, FORM);
  }
  const [x = 0, y = 0, width, height] = numbers.map(Number);
  if (x + (width ?? 0) > 100 || y + (height ?? 0) > 100) {
    return bad('A915', `${quoted(text)} reaches out of the picture: across and down there are 100 per cent.`, FORM);
  }
  if (width === 0 || height === 0)
    return bad('A915', `${quoted(text)} has no size. A point is written without one.`, `Write \`${x},${y}\`.`);
  return ok({ x, y, width: width ?? null, height: height ?? null });
}

/** The place as a fragment of the standard: `xywh=percent:12,40,18,22`, rounded to whole numbers; a point has one per cent. */
export function pictureFragment({ x, y, width, height }: PicturePlace): string {
  const whole = [x, y, width ?? 1, height ?? 1].map((one, n) => Math.max(n < 2 ? 0 : 1, Math.round(one)));
  return `xywh=percent:${whole.join(',')}`;
}
