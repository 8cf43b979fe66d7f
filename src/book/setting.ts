/** What every part of the book is set from: the record with its names and figures, and the pictures as files. */
import { inside } from '../journal/compile/paths.ts';
import { labelOfLink } from '../journal/model/link-target.ts';
import type { PartId, Picture, Session } from '../journal/model.ts';
import { decoded } from '../journal/values/link.ts';
import type { SiteRecord } from '../site/record.ts';
import { type RecordSheet, sheetOf } from '../site/views/page/sheet.ts';
import { sentence } from '../site/views/page/words.ts';
import { altOf } from '../site/views/pictures/pictures.ts';
import { printFile } from './print-pictures.ts';
import { call, literal, words } from './typst-text.ts';

export interface BookSetting {
  readonly sheet: RecordSheet;
  readonly record: SiteRecord;
  /** Parts that the book names, for its index. */
  readonly named: Set<PartId>;
  /** Pictures go to the head or foot of a page; else they stand where they are spoken of, and smaller. */
  readonly floats: boolean;
}

export function settingOf(record: SiteRecord, floats = true): BookSetting {
  return { sheet: sheetOf(record, 'index.html'), record, named: new Set(), floats };
}

/** Notes that a part is spoken of here. */
export function mention({ record, named }: BookSetting, id: PartId): string {
  if (!record.journal.parts.has(id)) return '';
  named.add(id);
  return `#mention(${literal(id)})`;
}

/** Where a picture lies among the files that the book is set from; null when it has none. */
export function pictureFile({ record }: BookSetting, file: string): string | null {
  const rendition = record.pictures.rendition(file);
  return rendition === null ? null : `/${printFile(rendition)}`;
}

/** Shares of the width, by what a picture is: what shows the whole is as wide as the page. */
const DETAIL_SHARE = '62%';

/** A picture with its caption; '' where the book has no file of it. */
export function figure(setting: BookSetting, picture: Picture, session: Session): string {
  const path = pictureFile(setting, picture.file);
  if (path === null) return '';
  const share = picture.view === 'detail' || !setting.floats ? DETAIL_SHARE : '100%';
  const day = setting.sheet.date(session.date);
  const alt = altOf(setting.sheet, picture, session);
  const caption = `[${words(`${sentence(picture.caption ?? alt)} ${day}.`)}]`;
  const shown = picture.shows.map((part) => mention(setting, part)).join('');
  return `${shown}${call('picture', { path: literal(path), alt: literal(alt), share, caption, float: String(setting.floats) })}`;
}

/** The picture that an address in a note's prose means. */
export function pictureAt(session: Session, url: string): Picture | null {
  const folder = session.file.slice(0, session.file.lastIndexOf('/'));
  const path = inside(folder, decoded(url));
  return session.pictures.find(({ file }) => file === path) ?? null;
}

/** What a link of the prose is called where it has no words of its own. */
export function nameOfLink({ record }: BookSetting, url: string): string {
  return labelOfLink(record, url) || url;
}
