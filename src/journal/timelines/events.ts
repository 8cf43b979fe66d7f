import type { IsoDate, PartId, PositionId } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { rankOf } from '../registers/stays.ts';
import { keptIn, once } from '../values/once.ts';
import { compareText } from '../values/text-order.ts';
import { KINDS, type TimelineEvent } from './event.ts';
import { gatherEvents, type Tagged } from './gather-events.ts';

interface EventIndex {
  readonly byPart: ReadonlyMap<PartId, readonly TimelineEvent[]>;
  readonly byPosition: ReadonlyMap<PositionId, readonly TimelineEvent[]>;
}

/** What happened to a part, in order. */
export function eventsOfPart(record: JournalRecord, part: PartId): readonly TimelineEvent[] {
  return indexOf(record).byPart.get(part) ?? [];
}

/** What happened at a position and to the parts that belong there, in order, each thing once. */
export function eventsOfPosition(record: JournalRecord, position: PositionId): readonly TimelineEvent[] {
  return indexOf(record).byPosition.get(position) ?? [];
}

/** One pass over everything there is. */
function makeIndex(record: JournalRecord): EventIndex {
  const byPart = new Map<PartId, TimelineEvent[]>();
  const byPosition = new Map<PositionId, TimelineEvent[]>();
  for (const { event, parts, positions } of inOrder(record, gatherEvents(record))) {
    for (const part of new Set(parts)) keptIn(byPart, part, noEvents).push(event);
    const homes = parts.map((part) => homeOf(record, part));
    for (const position of new Set([...homes, ...positions])) keptIn(byPosition, position, noEvents).push(event);
  }
  return { byPart, byPosition };
}

const indexOf = once(makeIndex);

const noEvents = (): TimelineEvent[] => [];

function homeOf(record: JournalRecord, part: PartId): PositionId {
  return record.journal.parts.get(part)?.position ?? part;
}

/** By date; on one day by session, what no session tells first; in a session by kind. */
function inOrder(record: JournalRecord, tagged: Iterable<Tagged>): readonly Tagged[] {
  const rank = rankOf(record);
  const keyed: Keyed[] = [];
  for (const one of tagged) {
    const { date, session, kind } = one.event;
    keyed.push({ one, date, session: session === null ? -1 : (rank.get(session) ?? -1), kind: KINDS.indexOf(kind) });
  }
  return keyed.sort(compareKeyed).map(({ one }) => one);
}

interface Keyed {
  readonly one: Tagged;
  readonly date: IsoDate;
  /** Its running number; -1 for none. */
  readonly session: number;
  readonly kind: number;
}

function compareKeyed(a: Keyed, b: Keyed): number {
  return compareText(a.date, b.date) || a.session - b.session || a.kind - b.kind;
}
