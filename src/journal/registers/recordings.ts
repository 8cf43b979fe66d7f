import type { IsoDate, PartId, Session, SessionId } from '../model.ts';
import { groupedBy, perRecord, type RegisterSource } from './source.ts';
import { orderedSessions } from './stays.ts';

/** A session in which marks or a picture of a part were recorded. */
export interface Recording {
  readonly session: SessionId;
  readonly date: IsoDate;
}

const byPart = perRecord((record) => {
  const found = new Map<PartId, Recording[]>();
  for (const session of orderedSessions(record)) {
    for (const part of new Set([...recordedIn(session), ...baggedIn(record, session)])) {
      const recording = { session: session.id, date: session.date };
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

function recordedIn(session: Session): readonly PartId[] {
  const marked = session.parts.filter(({ marks, did }) => areMarksTaken(marks) || did.includes('marked'));
  return [
    ...marked.map(({ part }) => part),
    ...session.pictures.flatMap(({ shows, named }) => (named.length > 0 ? named : shows)),
    ...session.film.flatMap(({ marks }) => marks.flatMap(({ parts }) => parts)),
  ];
}

/** True for marks as written, and for `none`: looked for, and not there. */
export function areMarksTaken(marks: string | null): boolean {
  return marks !== null && marks.trim().toLowerCase() !== 'not taken';
}

/** What a session put into bags of which it has a picture. */
function baggedIn(record: RegisterSource, session: Session): readonly PartId[] {
  const pictured = session.bags.filter(({ picture }) => picture !== null).map(({ bag }) => bag);
  return pictured.flatMap((bag) => (putIntoBags(record).get(session.id) ?? []).filter((one) => one.bag === bag).map(({ part }) => part));
}

const putIntoBags = perRecord((record) => {
  const put = record.history.deeds.flatMap(({ to, part, session }) => (to.at === 'bag' ? [{ bag: to.bag, part, session }] : []));
  return groupedBy(put, ({ session }) => session);
});
