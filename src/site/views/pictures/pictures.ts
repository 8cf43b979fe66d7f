/** How a picture of the journal is set on a page. */
import type { Picture, Session } from '../../../journal/model.ts';
import type { RenderedFile, Rendition } from '../../../photos/plan.ts';
import { takenWords } from '../../../photos/taken.ts';
import { pictureAt, placeOfPicture } from '../page/facts.ts';
import type { PictureOfSession } from '../page/long-lists.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { listedNames } from '../page/words.ts';

export interface SetPicture {
  readonly src: string;
  readonly width: number;
  readonly height: number;
  readonly sources: readonly { readonly type: string; readonly srcset: string }[];
  /** The largest rendering, to open by itself. */
  readonly full: string;
  readonly tall: boolean;
  /** Mean colour, `#rrggbb`, for the moment before it is there. */
  readonly colour: string | undefined;
  /** When it was taken and with what, as far as the journal keeps that; '' otherwise. */
  readonly taken: string;
}

/**
 * The picture of a path as this page shows it; null where there is no picture of it.
 *
 * @param small offer only the renderings that a page of many pictures needs
 */
export function setPicture(sheet: Sheet, path: string, small = false): SetPicture | null {
  const rendition = pictureAt(sheet, path);
  return rendition === null ? null : setRendition(sheet, rendition, small);
}

/** The two narrowest of a set are enough for a picture that is one of many. */
const SMALL = 2;

function setRendition(sheet: Sheet, one: Rendition, small: boolean): SetPicture {
  const written = ({ file, width }: RenderedFile) => `${sheet.link(file)} ${width}w`;
  return {
    src: sheet.link(one.fallback.file),
    width: one.width,
    height: one.height,
    sources: one.sources.map(({ type, srcset }) => ({
      type,
      srcset: srcset
        .slice(0, small ? SMALL : srcset.length)
        .map(written)
        .join(', '),
    })),
    full: sheet.link(one.full.file),
    tall: one.height > one.width,
    colour: one.placeholder ?? undefined,
    taken: takenWords(one, sheet.settings.timeZone),
  };
}

/**
 * What is said in place of a picture: its own text, else its caption, else the parts it shows, else which of the
 * session's pictures it is.
 */
export function altOf(sheet: Sheet, { alt, caption, shows, file }: Picture, session?: Session): string {
  if (alt !== null || caption !== null) return alt ?? caption ?? '';
  if (shows.length > 0) return `${listedNames(shows.map(sheet.partName))}.`;
  return session ? `A picture without words, ${numberWords(sheet, session, file)}.` : 'A picture without words.';
}

/** Which of a session's pictures one is, in the order they were taken: `4 of 12`. */
export function numberWords(sheet: Sheet, { id }: Session, file: string): string {
  const { place, of } = placeOfPicture(sheet, id, file);
  return `${place} of ${of}`;
}

/**
 * The picture that stands for a session: its first that shows something, in prose or after it.
 *
 * @param elsewhere paths of pictures that stand on the page already
 */
export function leadPicture(sheet: Sheet, session: Session, elsewhere: readonly string[] = []): Picture | null {
  const usable = session.pictures.filter(({ file }) => pictureAt(sheet, file) !== null && !elsewhere.includes(file));
  return usable.find(({ unmentioned }) => !unmentioned) ?? usable[0] ?? null;
}

/**
 * The picture at the head of the home page: the one that journal.yaml names as `front`, else of the sessions before those that are listed there, the last
 * that was taken as left, else the last that somebody spoke of, else the last of any. Tall ones are passed over.
 */
export function headPicture({ record }: RecordSheet, listed: number): PictureOfSession | null {
  const { sessions, settings } = record.journal;
  const all = sessions.flatMap((session) => session.pictures.map((picture) => ({ picture, session })));
  const chosen = settings.front === null ? undefined : all.find(({ picture }) => picture.file === settings.front);
  if (chosen && record.pictures.rendition(chosen.picture.file) !== null) return chosen;
  const before = new Set(sessions.slice(0, Math.max(0, sessions.length - listed)));
  const wide = all
    .filter(({ session }) => before.has(session))
    .filter(({ picture: { file } }) => {
      const rendition = record.pictures.rendition(file);
      return rendition !== null && rendition.width > rendition.height;
    });
  const asLeft = wide.findLast(({ picture }) => picture.view === 'as-left');
  return asLeft ?? wide.findLast(({ picture }) => !picture.unmentioned) ?? wide.at(-1) ?? null;
}
