import type { PartId, PositionId } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { rankOf } from '../registers/stays.ts';
import { keptIn, once } from '../values/once.ts';
import { compareText } from '../values/text-order.ts';
import { type EventKind, KINDS, type TimelineEvent } from './event.ts';
import { gatherEvents } from './gather-events.ts';

interface EventIndex {
  /** As they were gathered. */
  readonly byPart: ReadonlyMap<PartId, TimelineEvent[]>;
  readonly byPosition: ReadonlyMap<PositionId, TimelineEvent[]>;
  /** Puts events in order, where that has not been done. */
  inOrder(events: TimelineEvent[]): readonly TimelineEvent[];
}

/** What happened to a part, in order. */
export function eventsOfPart(record: JournalRecord, part: PartId): readonly TimelineEvent[] {
  const { byPart, inOrder } = indexOf(record);
  return inOrder(byPart.get(part) ?? []);
}

/** What happened at a position and to the parts that belong there, in order, each thing once. */
export function eventsOfPosition(record: JournalRecord, position: PositionId): readonly TimelineEvent[] {
  const { byPosition, inOrder } = indexOf(record);
  return inOrder(byPosition.get(position) ?? []);
}

/** One pass over everything there is. Few things happen in one place, so it costs least to put them in order there. */
function makeIndex(record: JournalRecord): EventIndex {
  const byPart = new Map<PartId, TimelineEvent[]>();
  const byPosition = new Map<PositionId, TimelineEvent[]>();
  const add = (to: Map<string, TimelineEvent[]>, id: string, event: TimelineEvent): void => {
    const events = keptIn(to, id, noEvents);
    if (events.at(-1) !== event) events.push(event);
  };
  gatherEvents(record, (event, parts, positions = []) => {
    for (const part of parts) add(byPart, part, event);
    for (const part of parts) add(byPosition, homeOf(record, part), event);
    for (const position of positions) add(byPosition, position, event);
  });
  const ordered = new Set<TimelineEvent[]>();
  const compare = comparing(record);
  const inOrder = (events: TimelineEvent[]): readonly TimelineEvent[] => {
    if (!ordered.has(events)) ordered.add(events.sort(compare));
    return events;
  };
  return { byPart, byPosition, inOrder };
}

const indexOf = once(makeIndex);

const noEvents = (): TimelineEvent[] => [];

function homeOf(record: JournalRecord, part: PartId): PositionId {
  return record.journal.parts.get(part)?.position ?? part;
}

/** By date; on one day by session, what no session tells first; in a session by kind. */
function comparing(record: JournalRecord): (a: TimelineEvent, b: TimelineEvent) => number {
  const rank = rankOf(record);
  const nth = ({ session }: TimelineEvent): number => (session === null ? -1 : (rank.get(session) ?? -1));
  return (a, b) => compareText(a.date, b.date) || nth(a) - nth(b) || PLACE[a.kind] - PLACE[b.kind];
}

const PLACE = Object.fromEntries(KINDS.map((kind, n) => [kind, n])) as Readonly<Record<EventKind, number>>;
