import type { IsoDate, Part, PartId, PositionId, SessionId } from '../model.ts';
import type { ItemHistory, JournalRecord } from '../record.ts';
import { filmIndex } from '../registers/film.ts';
import { observationsOf } from '../registers/observations.ts';
import { orderedSessions } from '../registers/stays.ts';
import type { TimelineEvent } from './event.ts';

/** An event and what it is about. */
export interface Tagged {
  readonly event: TimelineEvent;
  /** The parts it is about. */
  readonly parts: readonly PartId[];
  /** Positions it is about beside those its parts belong to. */
  readonly positions: readonly PositionId[];
}

/** Everything that happened to parts and at positions, from the history, the notes and the ledger; in no order. */
export function* gatherEvents(record: JournalRecord): Generator<Tagged> {
  yield* fromHistory(record);
  yield* fromNotes(record);
  yield* fromLedger(record);
}

function fromHistory(record: JournalRecord): Tagged[] {
  const { deeds, decisions, aside, items, stays } = record.history;
  return [
    ...[...record.journal.parts.values()].flatMap((part) => arrival(part, stays.get(part.id)?.[0]?.to?.session)),
    ...deeds.map((deed) => tag({ ...when(deed), kind: 'deed', deed }, [deed.part], [deed.position])),
    ...[...decisions.values(), aside].flat().map((decision) => {
      const parts = decision.with === null ? [decision.part] : [decision.part, decision.with];
      return tag({ ...when(decision), kind: 'decision', decision }, parts, [decision.position]);
    }),
    ...[...items.values()].flatMap(itemEvents),
  ];
}

/** A part whose arrival the catalogue dates, not a session. */
function arrival({ id, acquired }: Part, session: SessionId | null | undefined): Tagged[] {
  if (acquired === null || session !== null) return [];
  return [tag({ date: acquired, session: null, kind: 'arrived', part: id }, [id])];
}

function itemEvents(item: ItemHistory): Tagged[] {
  const part = item.opening.on?.part ?? null;
  if (part === null) return [];
  const { opened, deferred, closed } = item;
  return [
    tag({ ...when(opened), kind: 'opened', item }, [part]),
    ...deferred.map((deferral) => tag({ ...when(deferral), kind: 'deferred', item }, [part])),
    ...(closed ? [tag({ ...when(closed), kind: 'closed', item }, [part])] : []),
  ];
}

function fromNotes(record: JournalRecord): Tagged[] {
  const { byPart } = filmIndex(record);
  const marks = new Set([...byPart.values()].flat());
  return [
    ...orderedSessions(record).flatMap((session) => {
      const at = { date: session.date, session: session.id };
      return [
        ...session.attributed.map((attribution) => tag({ ...at, kind: 'attribution', attribution }, [attribution.part])),
        ...session.measured.map((measurement) => tag({ ...at, kind: 'measurement', measurement }, [measurement.part])),
        ...session.methods.map((method) => tag({ ...at, kind: 'method', method }, method.on)),
        ...session.pictures.map((picture) => tag({ ...at, kind: 'picture', picture }, picture.shows)),
        ...session.papers.map((paper) => tag({ ...at, kind: 'paper', paper }, paper.shows)),
      ];
    }),
    ...[...record.journal.parts.keys()].flatMap((part) =>
      observationsOf(record, part).map((observation) => tag({ ...when(observation), kind: 'observation', observation }, [part])),
    ),
    ...[...marks].map((mark) => tag({ ...when(mark), kind: 'film', mark }, mark.parts)),
  ];
}

function fromLedger(record: JournalRecord): Tagged[] {
  return record.ledger.entries
    .filter((entry) => entry.part !== null || entry.position !== null)
    .map((entry) => {
      const parts = entry.part === null ? [] : [entry.part];
      return tag({ ...when(entry), kind: 'entry', entry }, parts, entry.position === null ? [] : [entry.position]);
    });
}

function tag(event: TimelineEvent, parts: readonly PartId[], positions: readonly PositionId[] = []): Tagged {
  return { event, parts, positions };
}

function when({ date, session }: { date: IsoDate; session: SessionId }): { date: IsoDate; session: SessionId } {
  return { date, session };
}
