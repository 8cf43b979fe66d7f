import type { BagFilling, ConsumableId, Decision, Hazard, IsoDate, Picture, Session, SessionId } from '../../../journal/model.ts';
import type { Entry } from '../../../journal/record.ts';
import { hazardsOfSession } from '../../../journal/registers/hazards.ts';
import { consumablesNamedIn } from '../../../journal/registers/named-in.ts';
import { decisionHistory, type Superseded } from '../../../journal/timelines/decision-history.ts';
import type { Address } from '../../addresses.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import { type HandOverTold, handOversTold } from '../keepers/keepers.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { type SessionFigures, sessionFigures } from './session-facts.ts';
import { monthOfSessions } from './session-months.ts';
import { threadsOfSession } from './threads.ts';

/** Another session, as one is led to it. */
export type SessionNamed = Pick<Session, 'id' | 'title' | 'date'>;

/** A later session that decided again, on all or some of what had been decided; `some` is null where it was on all. */
interface LaterVerdict {
  readonly session: SessionId;
  readonly date: IsoDate;
  readonly some: number | null;
}

/** All that the page of a session shows, but for names. */
export interface SessionPage {
  readonly session: Session;
  /** Its prose; '' where it has none. */
  readonly html: string;
  readonly month: { readonly words: string; readonly to: Address };
  readonly before: SessionNamed | null;
  readonly after: SessionNamed | null;
  /** Later sessions that correct it. */
  readonly corrected: readonly SessionNamed[];
  readonly threads: readonly {
    readonly id: string;
    readonly title: string;
    readonly before: SessionNamed | null;
    readonly after: SessionNamed | null;
  }[];
  readonly hazards: readonly Hazard[];
  readonly consumables: readonly ConsumableId[];
  readonly figures: SessionFigures;
  readonly pictures: PicturesAfter;
  /** For each of its decisions, those that superseded it, and of how many. */
  readonly superseded: readonly (readonly LaterVerdict[])[];
  readonly handedOver: readonly HandOverTold[];
  /** What it booked. */
  readonly entries: readonly Entry[];
}

const PAGE = shown('session page', async (sheet, id: SessionId): Promise<SessionPage> => {
  const { record, index } = sheet;
  const session = index.sessions.get(id);
  if (session === undefined) throw new Error(`there is no session ${id}`);
  const { before, after } = neighbours(sheet, id);
  const { hazards, consumables } = cautionsOf(sheet, session);
  return {
    session,
    html: await record.noteHtml(id),
    month: monthOfSessions(sheet, session.date),
    before: named(before),
    after: named(after),
    corrected: (index.correctedBy.get(id) ?? []).flatMap((one) => named(one) ?? []),
    threads: threadsOfSession(record, id).map(({ thread, ...beside }) => ({
      id: thread.id,
      title: thread.title,
      before: named(beside.before),
      after: named(beside.after),
    })),
    hazards,
    consumables: [...consumables],
    figures: sessionFigures(sheet, session),
    pictures: picturesAfter(sheet, session),
    superseded: session.decisions.map((decision) =>
      supersededBy(sheet, decision).map(({ decision: later, count }) => ({
        session: later.session,
        date: later.date,
        some: count < decision.count ? count : null,
      })),
    ),
    handedOver: handOversTold(sheet, id),
    entries: index.entriesOf.get(id) ?? [],
  };
});

export const SESSION_QUESTIONS: readonly AnyQuestion[] = [PAGE];

/** @throws Error where there is no such session */
export const sessionPage = (sheet: Sheet, id: SessionId): Promise<SessionPage> => sheet.ask(PAGE, id);

const named = (session: Session | null): SessionNamed | null => session && { id: session.id, title: session.title, date: session.date };

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

/** The decisions that superseded one, each with how many it took of it; none while it is in force, or where it is on what never stood there. */
export function supersededBy({ record }: RecordSheet, { id, position }: Decision): readonly Superseded[] {
  const all = record.history.decisions.get(position) ?? [];
  return (
    decisionHistory(all, record.journal.positions.get(position)?.count ?? 1).find(({ decision }) => decision.id === id)?.supersededBy ?? []
  );
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
