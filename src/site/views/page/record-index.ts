/** What is asked of a record again and again, looked up by id: each index is made once, on first use. */
import type {
  BagFilling,
  Bill,
  FilmClip,
  ItemId,
  Measurement,
  Method,
  Paper,
  PartId,
  Picture,
  Session,
  SessionId,
} from '../../../journal/model.ts';
import type { Deed, Entry, ItemHistory, JournalRecord, MilestoneReached } from '../../../journal/record.ts';
import { keptIn, once } from '../../../journal/values/once.ts';

/** Something a session holds, with the session. */
export interface InSession<T> {
  readonly session: Session;
  readonly it: T;
}

export interface RecordIndex {
  readonly sessions: ReadonlyMap<SessionId, Session>;
  /** The place of a session in the journal's order. */
  readonly order: ReadonlyMap<SessionId, number>;
  readonly entriesOf: ReadonlyMap<SessionId, readonly Entry[]>;
  readonly deedsIn: ReadonlyMap<SessionId, readonly Deed[]>;
  readonly picturesOf: ReadonlyMap<PartId, readonly InSession<Picture>[]>;
  readonly clipsOf: ReadonlyMap<PartId, readonly InSession<FilmClip>[]>;
  readonly measuredOn: ReadonlyMap<PartId, readonly InSession<Measurement>[]>;
  readonly methodsOn: ReadonlyMap<PartId, readonly InSession<Method>[]>;
  readonly papersOf: ReadonlyMap<PartId, readonly InSession<Paper>[]>;
  readonly bagsOff: ReadonlyMap<PartId, readonly InSession<BagFilling>[]>;
  readonly itemsOn: ReadonlyMap<PartId, readonly ItemHistory[]>;
  readonly itemsById: ReadonlyMap<ItemId, ItemHistory>;
  readonly bills: ReadonlyMap<Bill['id'], Bill>;
  readonly reachedIn: ReadonlyMap<SessionId, readonly MilestoneReached[]>;
  /** Sessions that a later one corrects. */
  readonly correctedBy: ReadonlyMap<SessionId, readonly Session[]>;
}

/** The indexes of a record. One pass over sessions, deeds and entries. */
export const indexOf: (record: JournalRecord) => RecordIndex = once(makeIndex, ({ journal }) => journal);

function makeIndex({ journal, history, ledger }: JournalRecord): RecordIndex {
  const { sessions } = journal;
  const items = [...history.items.values()];
  return {
    sessions: new Map(sessions.map((one) => [one.id, one])),
    order: new Map(sessions.map((one, place) => [one.id, place])),
    entriesOf: Map.groupBy(ledger.entries, (one) => one.session),
    deedsIn: Map.groupBy(history.deeds, (one) => one.session),
    picturesOf: inSessions(
      sessions,
      (one) => one.pictures,
      (picture) => picture.shows,
    ),
    clipsOf: inSessions(
      sessions,
      (one) => one.film,
      (clip) => new Set(clip.marks.flatMap((mark) => mark.parts)),
    ),
    measuredOn: inSessions(
      sessions,
      (one) => one.measured,
      (one) => [one.part],
    ),
    methodsOn: inSessions(
      sessions,
      (one) => one.methods,
      (one) => one.on,
    ),
    papersOf: inSessions(
      sessions,
      (one) => one.papers,
      (one) => one.shows,
    ),
    bagsOff: inSessions(
      sessions,
      (one) => one.bags,
      (one) => (one.off === null ? [] : [one.off]),
    ),
    itemsOn: byKey(items, (one) => (one.opening.on?.part ? [one.opening.on.part] : [])),
    itemsById: history.items,
    bills: new Map(ledger.bills.map((one) => [one.id, one])),
    reachedIn: Map.groupBy(history.reached.values(), (one) => one.session),
    correctedBy: byKey(sessions, (one) => (one.corrects === null ? [] : [one.corrects])),
  };
}

function inSessions<T>(
  sessions: readonly Session[],
  things: (session: Session) => readonly T[],
  keys: (thing: T) => Iterable<string>,
): Map<string, InSession<T>[]> {
  const all = sessions.flatMap((session) => things(session).map((it) => ({ session, it })));
  return byKey(all, ({ it }) => keys(it));
}

/** Groups things by every key they have, in order. */
export function byKey<T>(things: Iterable<T>, keys: (thing: T) => Iterable<string>): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const thing of things) {
    for (const key of keys(thing)) keptIn(groups, key, () => []).push(thing);
  }
  return groups;
}
