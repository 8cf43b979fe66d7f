/** Places that a picture points at, as markup, and the piece of a picture that shows one part. */

import { toHtml } from 'hast-util-to-html';
import type { PartId, Picture, PicturePoint } from '../../../journal/model.ts';
import type { BagRow } from '../../../journal/registers/bags.ts';
import { pointMarks, pointsKey, type ShownPoint } from '../../../markdown/points.ts';
import { pictureAt, pictureOfSession } from '../page/facts.ts';
import { html } from '../page/html.ts';
import type { Sheet } from '../page/sheet.ts';

/** The marks over a picture and their key; null where it points at nothing, or there is no picture of it. */
export function pointsOn(sheet: Sheet, picture: Picture): { readonly marks: string; readonly key: string } | null {
  const rendition = pictureAt(sheet, picture.file);
  if (picture.points.length === 0 || rendition === null) return null;
  const points = picture.points.map((point) => shownPoint(sheet, point));
  return { marks: toHtml(pointMarks(points, rendition.width, rendition.height), { space: 'svg' }), key: toHtml(pointsKey(points)) };
}

/** The points of the picture of a bag, as its session lists it. */
export function pointsOnBag(sheet: Sheet, { filled, filling }: BagRow): ReturnType<typeof pointsOn> {
  if (filled.session === null || filling.picture === null) return null;
  const listed = pictureOfSession(sheet, filled.session, filling.picture);
  return listed === null ? null : pointsOn(sheet, listed);
}

function shownPoint(sheet: Sheet, { at, shows, note }: PicturePoint): ShownPoint {
  return { at, note, part: shows === null ? null : { name: sheet.partName(shows), href: sheet.toPart(shows) } };
}

/** How much is shown round a point, in per cent of the picture's width. */
const ROUND_A_POINT = 24;

export interface CloseUp {
  /** An `<svg>` that shows the piece. */
  readonly markup: string;
  readonly note: string | null;
}

/** The pieces of a picture that show a part: an area as it was drawn with some room, a point with what is round it. */
export function closeUps(sheet: Sheet, picture: Picture, part: PartId): readonly CloseUp[] {
  const rendition = pictureAt(sheet, picture.file);
  if (rendition === null) return [];
  const { width, height, full } = rendition;
  return picture.points.flatMap(({ at, shows, note }) => {
    if (shows !== part) return [];
    const wide = Math.min(100, at.width === null ? ROUND_A_POINT : at.width * 1.3);
    const high = Math.min(100, at.height === null ? (ROUND_A_POINT * width) / height : at.height * 1.3);
    const [middle, centre] = [at.x + (at.width ?? 0) / 2, at.y + (at.height ?? 0) / 2];
    const left = within(middle - wide / 2, 100 - wide);
    const top = within(centre - high / 2, 100 - high);
    const box = [(left * width) / 100, (top * height) / 100, (wide * width) / 100, (high * height) / 100].map((one) => Math.round(one));
    const label = `${sheet.partName(part)}${note === null ? '' : `: ${note}`}`;
    const { markup } =
      html`<svg class="close-up" viewBox="${box.join(' ')}" role="img" aria-label="${label}"><image href="${sheet.link(full.file)}" width="${width}" height="${height}"></image></svg>`;
    return [{ markup, note }];
  });
}

function within(value: number, most: number): number {
  return Math.min(Math.max(value, 0), Math.max(most, 0));
}
