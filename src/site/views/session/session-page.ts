import type { BagFilling, ConsumableId, Decision, Hazard, Picture, Session, SessionId } from '../../../journal/model.ts';
import { hazardsOfSession } from '../../../journal/registers/hazards.ts';
import { consumablesNamedIn } from '../../../journal/registers/named-in.ts';
import type { RecordSheet } from '../page/sheet.ts';

/** The hazards a session touches, and the consumables its note names. */
export function cautionsOf(
  { record }: RecordSheet,
  session: Session,
): { readonly hazards: readonly Hazard[]; readonly consumables: Iterable<ConsumableId> } {
  return { hazards: hazardsOfSession(record, session), consumables: consumablesNamedIn(session) };
}

export interface PicturesAfter {
  /** Those that the note mentions outside its prose, and those it does not mention, in the order taken. */
  readonly mentioned: readonly Picture[];
  readonly unmentioned: readonly Picture[];
  /** Some of the unmentioned can be shown. */
  readonly shows: boolean;
  /** No picture stands in the prose. */
  readonly all: boolean;
}

/** The picture that stands beside a bag on the page of the session that filled it; null where it stands in the prose. */
export function bagPicture(session: Session, { picture }: BagFilling): string | null {
  return session.pictures.some(({ file, inProse }) => inProse && file === picture) ? null : picture;
}

/** The pictures of a session that stand after its prose; those of bags stand beside their bags. */
export function picturesAfter({ record: { pictures } }: RecordSheet, session: Session): PicturesAfter {
  const bagged = new Set(session.bags.map(({ picture }) => picture));
  const outside = session.pictures.filter(({ inProse, file }) => !inProse && !bagged.has(file));
  const standing = pictures.inOrderTaken(outside.map(({ file }) => file));
  const after = standing.flatMap((file) => session.pictures.find((one) => one.file === file) ?? []);
  const unmentioned = after.filter((picture) => picture.unmentioned);
  return {
    mentioned: after.filter((picture) => !picture.unmentioned),
    unmentioned,
    shows: unmentioned.some(({ file }) => pictures.rendition(file) !== null),
    all: after.length === session.pictures.length,
  };
}

/** The decision that superseded one; null while it is in force. */
export function supersededBy({ record }: RecordSheet, decision: Decision): Decision | null {
  const all = record.history.decisions.get(decision.position) ?? [];
  return all[all.indexOf(decision) + 1] ?? null;
}

/** The sessions before and after one; null at the ends. */
export function neighbours(
  { record, index }: RecordSheet,
  id: SessionId,
): { readonly before: Session | null; readonly after: Session | null } {
  const { sessions } = record.journal;
  const place = index.order.get(id) ?? 0;
  return { before: sessions[place - 1] ?? null, after: sessions[place + 1] ?? null };
}
