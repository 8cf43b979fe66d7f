import type {
  Decision,
  IsoDate,
  Measurement,
  Method,
  Paper,
  Part,
  PartId,
  Picture,
  PositionId,
  SessionId,
} from '../model.ts';
import type { Deed, Entry, History, ItemHistory, JournalRecord, Ledger } from '../record.ts';
import { type FilmMark, filmIndex } from '../registers/film.ts';
import { type Observation, observationsOf } from '../registers/observations.ts';
import { groupedBy } from '../registers/source.ts';
import { orderedSessions, rankOf } from '../registers/stays.ts';

/** One thing that happened to a part or at a position. `session` is null for what the catalogue dates. */
export type TimelineEvent = { readonly date: IsoDate; readonly session: SessionId | null } & (
  | { readonly kind: 'arrived'; readonly part: PartId }
  | { readonly kind: 'deed'; readonly deed: Deed }
  /** Condition, marks or finish written down. */
  | { readonly kind: 'observation'; readonly observation: Observation }
  | { readonly kind: 'measurement'; readonly measurement: Measurement }
  | { readonly kind: 'decision'; readonly decision: Decision }
  | { readonly kind: 'method'; readonly method: Method }
  | { readonly kind: 'picture'; readonly picture: Picture }
  | { readonly kind: 'film'; readonly mark: FilmMark }
  | { readonly kind: 'paper'; readonly paper: Paper }
  | { readonly kind: 'opened' | 'deferred' | 'closed'; readonly item: ItemHistory }
  /** Hours (kind `labour`) and money. */
  | { readonly kind: 'entry'; readonly entry: Entry }
);

export type EventKind = TimelineEvent['kind'];

/** Events of one session stand in this order. */
const KINDS: readonly EventKind[] = [
  'arrived',
  'deed',
  'observation',
  'measurement',
  'decision',
  'method',
  'picture',
  'film',
  'paper',
  'opened',
  'deferred',
  'closed',
  'entry',
];

interface Tagged {
  readonly event: TimelineEvent;
  /** The parts it is about. */
  readonly parts: readonly PartId[];
  /** Positions it is about beside those its parts belong to. */
  readonly positions: readonly PositionId[];
}

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
  const tagged = inOrder(record, [...fromHistory(record), ...fromNotes(record), ...fromLedger(record)]);
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

function fromHistory(record: JournalRecord): Tagged[] {
  const { deeds, decisions, items, stays } = record.history;
  return [
    ...[...record.journal.parts.values()].flatMap((part) => arrival(part, stays.get(part.id)?.[0]?.to?.session)),
    ...deeds.map((deed) => tag({ ...when(deed), kind: 'deed', deed }, [deed.part], [deed.position])),
    ...[...decisions.values()].flat().map((decision) => {
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
        ...session.measured.map((measurement) => tag({ ...at, kind: 'measurement', measurement }, [measurement.part])),
        ...session.methods.map((method) => tag({ ...at, kind: 'method', method }, method.on)),
        ...session.pictures.map((picture) => tag({ ...at, kind: 'picture', picture }, picture.shows)),
        ...session.papers.map((paper) => tag({ ...at, kind: 'paper', paper }, paper.shows)),
      ];
    }),
    ...[...record.journal.parts.keys()].flatMap((part) =>
      observationsOf(record, part)
        .filter(({ entry }) => entry !== null)
        .map((observation) => tag({ ...when(observation), kind: 'observation', observation }, [part])),
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
