import type { BagFilling, IsoDate, PartId, Session, SessionId } from '../model.ts';
import { perRecord, type RegisterSource } from './source.ts';
import { orderedSessions } from './stays.ts';

/** A session in which marks or a picture of a part were recorded. */
export interface Recording {
  readonly session: SessionId;
  readonly date: IsoDate;
}

const byPart = perRecord((record) => {
  const found = new Map<PartId, Recording[]>();
  for (const session of orderedSessions(record)) {
    for (const part of new Set(recordedIn(session))) {
      const recording = { session: session.id, date: session.date };
      const list = found.get(part);
      if (list) list.push(recording);
      else found.set(part, [recording]);
    }
  }
  return found;
});

/**
 * The sessions that recorded a part, in order: its marks were written down or a mark put on, or it was shown in a
 * picture, on film, or in the picture of the bag it was put into or whose contents came off it.
 */
export function recordingsOf(record: RegisterSource, part: PartId): readonly Recording[] {
  return byPart(record).get(part) ?? [];
}

function recordedIn(session: Session): readonly PartId[] {
  const marked = session.parts.filter(({ marks, did }) => marks !== null || did.includes('marked'));
  return [
    ...marked.map(({ part }) => part),
    ...session.pictures.flatMap(({ shows }) => shows),
    ...session.film.flatMap(({ marks }) => marks.flatMap(({ parts }) => parts)),
    ...session.bags.filter(({ picture }) => picture !== null).flatMap((bag) => partsOfBag(session, bag)),
  ];
}

function partsOfBag({ parts }: Session, { bag, off }: BagFilling): readonly PartId[] {
  const inside = parts.filter(({ to }) => to?.bag === bag).map(({ part }) => part);
  return off === null ? inside : [off, ...inside];
}
