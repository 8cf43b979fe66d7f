/** How a picture of the journal is set on a page. */
import type { Picture, Session } from '../../journal/model.ts';
import type { RenderedFile, Rendition } from '../../photos/plan.ts';
import type { Sheet } from './sheet.ts';
import { listed } from './words.ts';

export interface SetPicture {
  readonly src: string;
  readonly width: number;
  readonly height: number;
  readonly sources: readonly { readonly type: string; readonly srcset: string }[];
  /** The largest rendering, to open by itself. */
  readonly full: string;
  readonly tall: boolean;
  readonly takenAt: string | null;
}

/** The picture of a path as this page shows it; null where there is no picture of it. */
export function setPicture(sheet: Sheet, path: string): SetPicture | null {
  const rendition = sheet.record.pictures.rendition(path);
  return rendition === null ? null : setRendition(sheet, rendition);
}

export function setRendition(sheet: Sheet, one: Rendition): SetPicture {
  const written = ({ file, width }: RenderedFile) => `${sheet.link(file)} ${width}w`;
  return {
    src: sheet.link(one.fallback.file),
    width: one.width,
    height: one.height,
    sources: one.sources.map(({ type, srcset }) => ({ type, srcset: srcset.map(written).join(', ') })),
    full: sheet.link(one.full.file),
    tall: one.height > one.width,
    takenAt: null,
  };
}

/** What is said in place of a picture: its own text, else its caption, else the parts it shows. */
export function altOf(sheet: Sheet, { alt, caption, shows }: Picture): string {
  return alt ?? caption ?? (shows.length > 0 ? `${listed(shows.map(sheet.partName))}.` : 'A picture without words.');
}

/** The picture that stands for a session: its first that shows something, in prose or after it. */
export function leadPicture(sheet: Sheet, session: Session): Picture | null {
  const usable = session.pictures.filter(({ file }) => sheet.record.pictures.rendition(file) !== null);
  return usable.find(({ unmentioned }) => !unmentioned) ?? usable[0] ?? null;
}
