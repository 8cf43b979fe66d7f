import type { IsoDate, Part, PartId, PositionId, SessionId } from '../model.ts';
import type { ItemHistory, JournalRecord } from '../record.ts';
import { filmIndex } from '../registers/film.ts';
import { observationsOf } from '../registers/observations.ts';
import { orderedSessions } from '../registers/stays.ts';
import type { TimelineEvent } from './event.ts';

/**
 * Takes an event.
 *
 * @param parts that it is about
 * @param positions that it is about beside those its parts belong to
 */
export type TakeEvent = (event: TimelineEvent, parts: readonly PartId[], positions?: readonly PositionId[]) => void;

/**
 * Hands over everything that happened to parts and at positions, from the history, the notes and the ledger; in no order. One
 * after the other, since a long journal has a hundred thousand of them.
 */
export function gatherEvents(record: JournalRecord, take: TakeEvent): void {
  fromHistory(record, take);
  fromNotes(record, take);
  fromLedger(record, take);
}

function fromHistory(record: JournalRecord, take: TakeEvent): void {
  const { deeds, decisions, aside, items, stays } = record.history;
  for (const part of record.journal.parts.values()) takeArrival(part, stays.get(part.id)?.[0]?.to?.session, take);
  for (const deed of deeds) take({ ...when(deed), kind: 'deed', deed }, [deed.part], [deed.position]);
  for (const some of [...decisions.values(), aside]) {
    for (const decision of some) {
      const parts = decision.with === null ? [decision.part] : [decision.part, decision.with];
      take({ ...when(decision), kind: 'decision', decision }, parts, [decision.position]);
    }
  }
  for (const item of items.values()) takeItem(item, take);
}

/** A part whose arrival the catalogue dates, not a session. */
function takeArrival({ id, acquired }: Part, session: SessionId | null | undefined, take: TakeEvent): void {
  if (acquired !== null && session === null) take({ date: acquired, session: null, kind: 'arrived', part: id }, [id]);
}

function takeItem(item: ItemHistory, take: TakeEvent): void {
  const part = item.opening.on?.part ?? null;
  if (part === null) return;
  const { opened, deferred, closed } = item;
  take({ ...when(opened), kind: 'opened', item }, [part]);
  for (const deferral of deferred) take({ ...when(deferral), kind: 'deferred', item }, [part]);
  if (closed) take({ ...when(closed), kind: 'closed', item }, [part]);
}

function fromNotes(record: JournalRecord, take: TakeEvent): void {
  for (const { id, date, attributed, measured, methods, pictures, papers } of orderedSessions(record)) {
    const at = { date, session: id };
    for (const attribution of attributed) take({ ...at, kind: 'attribution', attribution }, [attribution.part]);
    for (const measurement of measured) take({ ...at, kind: 'measurement', measurement }, [measurement.part]);
    for (const method of methods) take({ ...at, kind: 'method', method }, method.on);
    for (const picture of pictures) take({ ...at, kind: 'picture', picture }, picture.shows);
    for (const paper of papers) take({ ...at, kind: 'paper', paper }, paper.shows);
  }
  for (const part of record.journal.parts.keys()) {
    for (const observation of observationsOf(record, part)) take({ ...when(observation), kind: 'observation', observation }, [part]);
  }
  const marks = new Set([...filmIndex(record).byPart.values()].flat());
  for (const mark of marks) take({ ...when(mark), kind: 'film', mark }, mark.parts);
}

function fromLedger({ ledger }: JournalRecord, take: TakeEvent): void {
  for (const entry of ledger.entries) {
    const { part, position } = entry;
    if (part === null && position === null) continue;
    take({ ...when(entry), kind: 'entry', entry }, part === null ? [] : [part], position === null ? [] : [position]);
  }
}

function when({ date, session }: { date: IsoDate; session: SessionId }): { date: IsoDate; session: SessionId } {
  return { date, session };
}
