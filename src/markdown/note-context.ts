/** What presenting one note needs to know about the rest of the journal, as plain data. */
import { folderOf, inside, oneName } from '../journal/compile/paths.ts';
import { type LinkTarget, labelOf, linkTarget } from '../journal/model/link-target.ts';
import type { Picture, Session } from '../journal/model.ts';
import type { JournalRecord } from '../journal/record.ts';
import { decoded, linkText } from '../journal/values/link.ts';
import type { PicturePlan, RenderedFile } from '../photos/plan.ts';
import { BAG_WIDTHS, PROSE_WIDTHS } from '../photos/shown-widths.ts';
import { takenWords } from '../photos/taken.ts';
import { type Address, bagAddress, consumableAddress, itemAddress, linksFrom, partAddress, sessionAddress } from '../site/addresses.ts';
import type { ShownPoint } from './points.ts';

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
  readonly points: readonly ShownPoint[];
  /** It is the picture of a bag: a label to know it by, set small. */
  readonly ofBag: boolean;
}

export interface NoteContext {
  /** The folder of the note inside the journal. */
  readonly folder: string;
  /** By link as written, `part:front-drum-near`. */
  readonly targets: ReadonlyMap<string, Target>;
  /** By path inside the journal. */
  readonly pictures: ReadonlyMap<string, NotePicture>;
  /** Links to other published files, by path inside the journal. */
  readonly files: ReadonlyMap<string, string>;
}

/** A relative path of a paper or a note, as a link writes it. */
// From the first sign of a word only: of those without blanks some are as long as a note.
const FILE = /(?<![^\s()<>"'[\]])[^\s()<>"'[\]]+\.(?:md|pdf|jpe?g|png|webp|tiff?|avif|hei[cf])\b/gi;

/** Gives the context of a note of this record. Only what the note names is in it, so that a rendered note can be kept for as long as that stays the same. */
export type ContextOf = (session: Session) => NoteContext;

/**
 * Prepares for gathering the contexts of many notes.
 *
 * @param record the compiled journal
 * @param plan what each picture and paper becomes
 */
export function noteContexts(record: JournalRecord, plan: PicturePlan): ContextOf {
  const notes: Notes = new Map(record.journal.sessions.map((session) => [session.file, session]));
  return (session) => {
    const link = linksFrom(sessionAddress(session.id));
    return {
      folder: folderOf(session.file),
      targets: targetsNamed(record, session, link),
      pictures: picturesShown(session, record, plan, link),
      files: filesNamed(notes, session, plan, link),
    };
  };
}

type Link = (to: Address) => string;

/** Notes by file. */
type Notes = ReadonlyMap<string, Session>;

function targetsNamed(record: JournalRecord, session: Session, link: Link): ReadonlyMap<string, Target> {
  const targets = new Map<string, Target>();
  for (const named of session.links) {
    const target = linkTarget(record, named);
    if (target) targets.set(linkText(named), { href: link(addressOf(target)), label: labelOf(target) });
  }
  return targets;
}

function addressOf(target: LinkTarget): Address {
  if (target.scheme === 'part') return partAddress(target.part);
  if (target.scheme === 'bag') return bagAddress(target.bag.bag);
  if (target.scheme === 'item') return itemAddress(target.item.id);
  return target.scheme === 'consumable' ? consumableAddress(target.consumable.id) : sessionAddress(target.session.id);
}

function picturesShown(session: Session, record: JournalRecord, plan: PicturePlan, link: Link): ReadonlyMap<string, NotePicture> {
  const pictures = new Map<string, NotePicture>();
  const bags = new Set(session.bags.map(({ picture }) => picture));
  for (const picture of session.pictures) {
    const ofBag = bags.has(picture.file);
    const view = picture.inProse ? notePicture(picture, ofBag, record, plan, link) : null;
    if (view) pictures.set(oneName(picture.file), view);
  }
  return pictures;
}

function notePicture(picture: Picture, ofBag: boolean, { journal }: JournalRecord, plan: PicturePlan, link: Link): NotePicture | null {
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
    widths: ofBag ? BAG_WIDTHS : PROSE_WIDTHS,
    ofBag,
    full: link(rendition.full.file),
    colour: rendition.placeholder,
    taken: takenWords(rendition, journal.settings.timeZone),
    points: picture.points.map(({ at, shows, note }) => {
      const part = shows === null ? undefined : journal.parts.get(shows);
      return { at, note, part: part ? { name: part.name, href: link(partAddress(part)) } : null };
    }),
  };
}

/** Papers and other notes that a plain relative link names. */
function filesNamed(notes: Notes, session: Session, plan: PicturePlan, link: Link): ReadonlyMap<string, string> {
  const files = new Map<string, string>();
  const folder = folderOf(session.file);
  for (const [written] of session.body.matchAll(FILE)) {
    const path = inside(folder, decoded(written));
    if (path === null) continue;
    const note = notes.get(path);
    const paper = plan.paper(path);
    if (note) files.set(path, link(sessionAddress(note.id)));
    else if (paper) files.set(path, link(paper.file));
  }
  return files;
}
