import type { PartId, PositionId } from '../model.ts';
import type { History, JournalRecord, Ledger } from '../record.ts';
import { groupedBy } from '../registers/source.ts';
import { rankOf } from '../registers/stays.ts';
import { KINDS, type TimelineEvent } from './event.ts';
import { gatherEvents, type Tagged } from './gather-events.ts';

interface EventIndex {
  readonly ledger: Ledger;
  readonly byPart: ReadonlyMap<PartId, readonly TimelineEvent[]>;
  readonly byPosition: ReadonlyMap<PositionId, readonly TimelineEvent[]>;
}

const indexes = new WeakMap<History, EventIndex>();

/** What happened to a part, in order. */
export function eventsOfPart(record: JournalRecord, part: PartId): readonly TimelineEvent[] {
  return indexOf(record).byPart.get(part) ?? [];
}

/** What happened at a position and to the parts that belong there, in order, each thing once. */
export function eventsOfPosition(record: JournalRecord, position: PositionId): readonly TimelineEvent[] {
  return indexOf(record).byPosition.get(position) ?? [];
}

/** Built once for a history and its ledger: one pass over everything there is. */
function indexOf(record: JournalRecord): EventIndex {
  const { history, ledger } = record;
  const known = indexes.get(history);
  if (known?.ledger === ledger) return known;
  const tagged = inOrder(record, gatherEvents(record));
  const byPart = tagged.flatMap(({ event, parts }) => [...new Set(parts)].map((part) => ({ key: part, event })));
  const byPosition = tagged.flatMap(({ event, parts, positions }) =>
    [...new Set([...parts.map((part) => homeOf(record, part)), ...positions])].map((key) => ({ key, event })),
  );
  const index = { ledger, byPart: eventsBy(byPart), byPosition: eventsBy(byPosition) };
  indexes.set(history, index);
  return index;
}

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
