/** What presenting one note needs to know about the rest of the journal, as plain data. */
import { folderOf, inside } from '../journal/compile/paths.ts';
import type { Picture, Session } from '../journal/model.ts';
import type { JournalRecord } from '../journal/record.ts';
import type { PicturePlan, RenderedFile } from '../photos/plan.ts';
import { PROSE_WIDTHS } from '../photos/shown-widths.ts';
import { takenWords } from '../photos/taken.ts';
import { type Address, bagAddress, consumableAddress, itemAddress, linksFrom, partAddress, sessionAddress } from '../site/addresses.ts';
import { decoded } from './references.ts';

/** Where a link of ours leads, and what it is called when the link has no words of its own. */
export interface Target {
  readonly href: string;
  readonly label: string;
}

/** A picture as the page needs it; every address is relative to the page of the note. */
export interface NotePicture {
  readonly alt: string;
  readonly caption: string | null;
  readonly width: number;
  readonly height: number;
  readonly src: string;
  readonly sources: readonly { readonly type: string; readonly srcset: string }[];
  /** How wide it is set, as the attribute `sizes` has it. */
  readonly widths: string;
  readonly full: string;
  /** Mean colour, `#rrggbb`, for the moment before the picture is there. */
  readonly colour: string | null;
  /** When it was taken and with what, as far as the journal keeps that; '' otherwise. */
  readonly taken: string;
}

export interface NoteContext {
  /** The folder of the note inside the journal. */
  readonly folder: string;
  /** By link as written, `part:front-drum-near`. */
  readonly targets: Readonly<Record<string, Target>>;
  /** By path inside the journal. */
  readonly pictures: Readonly<Record<string, NotePicture>>;
  /** Links to other published files, by path inside the journal. */
  readonly files: Readonly<Record<string, string>>;
}

/** A relative path of a paper or a note, as a link writes it. */
const FILE = /[^\s()<>"'[\]]+\.(?:md|pdf|jpe?g|png|webp|tiff?|avif|hei[cf])\b/gi;
const REFERENCE = /\b(part|bag|item|session|consumable):([A-Za-z0-9-]+)/g;

/** Gives the context of a note of this record. Only what the note names is in it, so that a rendered note can be kept for as long as that stays the same. */
export type ContextOf = (session: Session) => NoteContext;

/**
 * Prepares for gathering the contexts of many notes.
 *
 * @param record the compiled journal
 * @param plan what each picture and paper becomes
 */
export function noteContexts(record: JournalRecord, plan: PicturePlan): ContextOf {
  const index = indexOf(record);
  return (session) => {
    const link = linksFrom(sessionAddress(session.id));
    return {
      folder: folderOf(session.file),
      targets: targetsNamed(record, index, session, link),
      pictures: picturesShown(session, plan, link, record.journal.settings.timeZone),
      files: filesNamed(index, session, plan, link),
    };
  };
}

type Link = (to: Address) => string;

interface Index {
  readonly byId: ReadonlyMap<string, Session>;
  /** Null when several sessions have that date. */
  readonly byDate: ReadonlyMap<string, Session | null>;
  readonly byFile: ReadonlyMap<string, Session>;
}

function indexOf({ journal }: JournalRecord): Index {
  const byDate = new Map<string, Session | null>();
  for (const session of journal.sessions) byDate.set(session.date, byDate.has(session.date) ? null : session);
  return {
    byId: new Map(journal.sessions.map((session) => [session.id, session])),
    byDate,
    byFile: new Map(journal.sessions.map((session) => [session.file, session])),
  };
}

function targetsNamed(record: JournalRecord, index: Index, session: Session, link: Link): Record<string, Target> {
  const targets: Record<string, Target> = {};
  for (const [written, scheme = '', id = ''] of session.body.matchAll(REFERENCE)) {
    const aim = aimOf(record, index, scheme, id);
    if (aim) targets[written] = { href: link(aim.address), label: aim.label };
  }
  return targets;
}

interface Aim {
  readonly address: Address;
  readonly label: string;
}

function aimOf({ journal, history }: JournalRecord, index: Index, scheme: string, id: string): Aim | null {
  if (scheme === 'part') {
    const part = journal.parts.get(id);
    return part ? { address: partAddress(part), label: part.name } : null;
  }
  if (scheme === 'bag') return history.bags.has(Number(id)) ? { address: bagAddress(Number(id)), label: `bag ${Number(id)}` } : null;
  if (scheme === 'item') {
    const item = history.items.get(id);
    return item ? { address: itemAddress(id), label: item.opening.what } : null;
  }
  if (scheme === 'consumable') {
    const consumable = journal.consumables.get(id);
    return consumable ? { address: consumableAddress(id), label: consumable.name } : null;
  }
  const session = index.byId.get(id) ?? index.byDate.get(id);
  return session ? { address: sessionAddress(session.id), label: session.title } : null;
}

function picturesShown(session: Session, plan: PicturePlan, link: Link, timeZone: string): Record<string, NotePicture> {
  const pictures: Record<string, NotePicture> = {};
  for (const picture of session.pictures) {
    const view = picture.inProse ? notePicture(picture, plan, link, timeZone) : null;
    if (view) pictures[picture.file] = view;
  }
  return pictures;
}

function notePicture(picture: Picture, plan: PicturePlan, link: Link, timeZone: string): NotePicture | null {
  const rendition = plan.rendition(picture.file);
  if (!rendition) return null;
  const set = (files: readonly RenderedFile[]): string => files.map((file) => `${link(file.file)} ${file.width}w`).join(', ');
  return {
    alt: picture.alt ?? picture.caption ?? '',
    caption: picture.caption,
    width: rendition.width,
    height: rendition.height,
    src: link(rendition.fallback.file),
    sources: rendition.sources.map(({ type, srcset }) => ({ type, srcset: set(srcset) })),
    widths: PROSE_WIDTHS,
    full: link(rendition.full.file),
    colour: rendition.placeholder,
    taken: takenWords(rendition, timeZone),
  };
}

/** Papers and other notes that a plain relative link names. */
function filesNamed(index: Index, session: Session, plan: PicturePlan, link: Link): Record<string, string> {
  const files: Record<string, string> = {};
  const folder = folderOf(session.file);
  for (const [written] of session.body.matchAll(FILE)) {
    const path = inside(folder, decoded(written));
    if (path === null) continue;
    const note = index.byFile.get(path);
    const paper = plan.paper(path);
    if (note) files[path] = link(sessionAddress(note.id));
    else if (paper) files[path] = link(paper.file);
  }
  return files;
}
