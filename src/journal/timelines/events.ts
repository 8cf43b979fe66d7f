import type { PartId, PositionId } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { groupedBy } from '../registers/source.ts';
import { rankOf } from '../registers/stays.ts';
import { once } from '../values/once.ts';
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
  const tagged = inOrder(record, gatherEvents(record));
  const byPart = tagged.flatMap(({ event, parts }) => [...new Set(parts)].map((part) => ({ key: part, event })));
  const byPosition = tagged.flatMap(({ event, parts, positions }) =>
    [...new Set([...parts.map((part) => homeOf(record, part)), ...positions])].map((key) => ({ key, event })),
  );
  return { byPart: eventsBy(byPart), byPosition: eventsBy(byPosition) };
}

const indexOf = once(makeIndex);

function eventsBy(keyed: readonly { key: string; event: TimelineEvent }[]): Map<string, readonly TimelineEvent[]> {
  return new Map([...groupedBy(keyed, ({ key }) => key)].map(([key, list]) => [key, list.map(({ event }) => event)]));
}

function homeOf(record: JournalRecord, part: PartId): PositionId {
  return record.journal.parts.get(part)?.position ?? part;
}

function inOrder(record: JournalRecord, tagged: readonly Tagged[]): readonly Tagged[] {
  const rank = rankOf(record);
  const keyed = tagged.map((one) => ({
    one,
    date: one.event.date,
    session: one.event.session === null ? -1 : (rank.get(one.event.session) ?? -1),
    kind: KINDS.indexOf(one.event.kind),
  }));
  keyed.sort((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : a.session - b.session || a.kind - b.kind));
  return keyed.map(({ one }) => one);
}
