import type { IsoDate, PartId, Session, SessionId } from '../model.ts';
import { numbersSeen } from './observations.ts';
import { groupedBy, perRecord, type RegisterSource } from './source.ts';
import { orderedSessions } from './stays.ts';

/** A session in which marks or a picture of a part were recorded. */
export interface Recording {
  readonly session: SessionId;
  readonly date: IsoDate;
  /** Those of a numbered lot that it is of; null for the whole part. */
  readonly which: readonly number[] | null;
}

/** Of which part a recording is, and of a numbered lot of which. */
type Recorded = Pick<Recording, 'which'> & { readonly part: PartId };

const byPart = perRecord((record) => {
  const found = new Map<PartId, Recording[]>();
  for (const session of orderedSessions(record)) {
    for (const [part, all] of groupedBy([...recordedIn(record, session), ...baggedIn(record, session)], (one) => one.part)) {
      const recording = { session: session.id, date: session.date, which: togetherOf(all) };
      const list = found.get(part);
      if (list) list.push(recording);
      else found.set(part, [recording]);
    }
  }
  return found;
});

/**
 * The sessions that recorded a part, in order: its marks were looked for or a mark put on, or it was shown in a
 * picture, on film, or in the picture of the bag it was put into. A picture that its entry names for some parts shows
 * those; else those linked in its paragraph.
 */
export function recordingsOf(record: RegisterSource, part: PartId): readonly Recording[] {
  return byPart(record).get(part) ?? [];
}

function togetherOf(all: readonly Recorded[]): readonly number[] | null {
  return all.some(({ which }) => which === null) ? null : [...new Set(all.flatMap(({ which }) => which ?? []))];
}

function recordedIn(record: RegisterSource, session: Session): readonly Recorded[] {
  const marked = session.parts.filter(({ marks, did }) => areMarksTaken(marks) || did.includes('marked'));
  const shown = [
    ...session.pictures.flatMap(({ shows, named }) => (named.length > 0 ? named : shows)),
    ...session.film.flatMap(({ marks }) => marks.flatMap(({ parts }) => parts)),
  ];
  return [
    ...marked.map((entry) => ({ part: entry.part, which: numbersSeen(record, { part: entry.part, entry }) })),
    ...shown.map((part) => ({ part, which: null })),
  ];
}

/** True for marks as written, and for `none`: looked for, and not there. */
export function areMarksTaken(marks: string | null): boolean {
  return marks !== null && marks.trim().toLowerCase() !== 'not taken';
}

/** What a session put into bags of which it has a picture. */
function baggedIn(record: RegisterSource, session: Session): readonly Recorded[] {
  const pictured = session.bags.filter(({ picture }) => picture !== null).map(({ bag }) => bag);
  return pictured.flatMap((bag) => (putIntoBags(record).get(session.id) ?? []).filter((one) => one.bag === bag));
}

const putIntoBags = perRecord((record) => {
  const put = record.history.deeds.flatMap(({ to, part, which, session }) =>
    to.at === 'bag' ? [{ bag: to.bag, part, which, session }] : [],
  );
  return groupedBy(put, ({ session }) => session);
});
