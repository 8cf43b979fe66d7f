import type { Charge, IsoDate, ItemId, ItemKind, Milestone, MilestoneId, Minor, SubsystemId } from '../model.ts';
import { GENERAL } from '../model.ts';
import type { ItemHistory, MilestoneReached } from '../record.ts';
import { daysBetween } from '../values/date.ts';
import { compareText } from '../values/text-order.ts';
import { type At, dateOf, groupedBy, type RegisterSource } from './source.ts';

/** An open item as it stood at the end of a day. */
export interface ItemRow {
  readonly id: ItemId;
  readonly kind: ItemKind;
  readonly what: string;
  readonly on: Charge | null;
  readonly price: Minor | null;
  /** What it is likely to take, in minutes. */
  readonly hours: number | null;
  /** Whom it waits for. */
  readonly from: string | null;
  /** The day it was promised. */
  readonly promised: IsoDate | null;
  readonly opened: ItemHistory['opened'];
  /** The milestone it is due before, deferrals counted. */
  readonly due: MilestoneId | null;
  readonly deferred: ItemHistory['deferred'];
  /** Null while it is open. */
  readonly closed: ItemHistory['closed'];
  /** Days it has been open, or was until it was closed. */
  readonly days: number;
}

/** A milestone and what holds it. */
export interface Gate {
  readonly milestone: Milestone;
  /** Null while it is not reached. */
  readonly reached: MilestoneReached | null;
  /** Open items due before this very milestone; temporary measures are not among them. */
  readonly items: readonly ItemRow[];
  /** Temporary measures to undo before this very milestone. */
  readonly temporary: readonly ItemRow[];
  /** Open items due before an earlier milestone: they hold this gate too, whatever that one was passed with. */
  readonly earlier: readonly ItemRow[];
  /** The vehicle may pass: it has passed, or nothing holds the gate. */
  readonly mayPass: boolean;
}

/** Every item opened by the end of a day, open or closed, in the order they were opened. */
export function itemsAt(record: RegisterSource, at: At): readonly ItemRow[] {
  const date = dateOf(record, at);
  return [...record.history.items.values()].filter(({ opened }) => opened.date <= date).map((item) => rowOf(item, date));
}

/** What is open at the end of a day, in the order it was opened. */
export function openItemsAt(record: RegisterSource, at: At): readonly ItemRow[] {
  const date = dateOf(record, at);
  const isOpen = ({ opened, closed }: ItemHistory) => opened.date <= date && (closed === null || closed.date > date);
  return [...record.history.items.values()].filter(isOpen).map((item) => rowOf(item, date));
}

/** One item as it stood at the end of a day. */
export function itemRowAt(item: ItemHistory, date: IsoDate): ItemRow {
  return rowOf(item, date);
}

/** Things to buy, to take to a sale. */
export function thingsToBuyAt(record: RegisterSource, at: At): readonly ItemRow[] {
  return openItemsAt(record, at).filter(({ kind }) => kind === 'buy');
}

/** Things to find out. */
export function questionsAt(record: RegisterSource, at: At): readonly ItemRow[] {
  return openItemsAt(record, at).filter(({ kind }) => kind === 'question');
}

/** What others have promised, the earliest day first; what has no day comes last. */
export function waitingAt(record: RegisterSource, at: At): readonly ItemRow[] {
  const waiting = openItemsAt(record, at).filter(({ kind }) => kind === 'waiting');
  return [...waiting].sort((a, b) => compareText(a.promised ?? '9999', b.promised ?? '9999'));
}

/** Whether an item is asked for its hours: whatever says some, and all that is work of one's own and not a thing to buy or to wait for. */
export function takesHours({ kind, hours }: ItemRow): boolean {
  return hours !== null || (kind !== 'buy' && kind !== 'waiting');
}

/** Temporary measures that are live, oldest first. */
export function temporaryMeasuresAt(record: RegisterSource, at: At): readonly ItemRow[] {
  return openItemsAt(record, at).filter(({ kind }) => kind === 'temporary');
}

/** Open items by subsystem, in declared order; what names none comes last, under `general`. */
export function openItemsBySubsystem(record: RegisterSource, at: At): ReadonlyMap<SubsystemId, readonly ItemRow[]> {
  const by = groupedBy(openItemsAt(record, at), ({ on }) => on?.subsystem ?? GENERAL);
  const declared = [...record.journal.subsystems.keys()].filter((id) => id !== GENERAL);
  return new Map([...declared, GENERAL].filter((id) => by.has(id)).map((id) => [id, by.get(id) ?? []]));
}

/** Every milestone in declared order with what holds it. What is due before none of them is in `openItemsAt` alone. */
export function gatesAt(record: RegisterSource, at: At): readonly Gate[] {
  const date = dateOf(record, at);
  const open = openItemsAt(record, at);
  const order = new Map(record.journal.milestones.map((milestone) => [milestone.id, milestone.order]));
  const reached = [...record.history.reached.values()].filter((one) => one.date <= date);
  return record.journal.milestones.map((milestone) => {
    const due = open.filter((item) => item.due === milestone.id);
    const before = ({ due: gate }: ItemRow) => gate !== null && (order.get(gate) ?? 0) < milestone.order;
    const earlier = open.filter(before);
    const passed = reached.find((one) => one.milestone === milestone.id) ?? null;
    return {
      milestone,
      reached: passed,
      items: due.filter(({ kind }) => kind !== 'temporary'),
      temporary: due.filter(({ kind }) => kind === 'temporary'),
      earlier,
      mayPass: passed !== null || (due.length === 0 && earlier.length === 0),
    };
  });
}

function rowOf(item: ItemHistory, date: IsoDate): ItemRow {
  const deferred = item.deferred.filter((deferral) => deferral.date <= date);
  const closed = item.closed && item.closed.date <= date ? item.closed : null;
  const { kind, what, on, price, hours, before, from, due } = item.opening;
  return {
    id: item.id,
    kind,
    what,
    on,
    price,
    hours,
    from,
    promised: due,
    opened: item.opened,
    due: deferred.at(-1)?.to ?? before,
    deferred,
    closed,
    days: daysBetween(item.opened.date, closed?.date ?? date),
  };
}
