import type { Decision, PartId } from '../model.ts';
import { daysBetween } from '../values/date.ts';
import { type RegisterRow, registerAt } from './register.ts';
import { type At, dateOf, type RegisterSource } from './source.ts';
import { deedsOf } from './stays.ts';
import type { Pending } from './to-do.ts';

export type { Pending } from './to-do.ts';

/** A decision not carried out, with its age in whole days at the date asked for. */
export interface AgedPending extends Pending {
  readonly days: number;
}

/** Decisions not carried out at the end of a day, oldest decision first. */
export function neverCarriedOut(record: RegisterSource, at: At): readonly AgedPending[] {
  const date = dateOf(record, at);
  return registerAt(record, at)
    .flatMap((row) => row.pending)
    .map((pending) => ({ ...pending, days: daysBetween(pending.decision.date, date) }))
    .sort((a, b) => b.days - a.days);
}

/** Positions, or a share of a lot, that nobody has decided on. */
export interface Undecided {
  readonly row: RegisterRow;
  readonly count: number;
  /** Decisions in force that put the question off. */
  readonly deferred: readonly Decision[];
  /** Something was taken off, fitted or worked on here: the question is not idle. */
  readonly touched: boolean;
}

/** What is undecided at the end of a day, in catalogue order. */
export function undecidedAt(record: RegisterSource, at: At): readonly Undecided[] {
  const date = dateOf(record, at);
  return registerAt(record, at)
    .filter((row) => row.undecided > 0)
    .map((row) => ({
      row,
      count: row.undecided,
      deferred: row.inForce.map(({ decision }) => decision).filter(({ verdict }) => verdict === 'defer'),
      touched: partsAt(record, row).some((part) => deedsOf(record, part).some((deed) => deed.date <= date)),
    }));
}

function partsAt(record: RegisterSource, row: RegisterRow): readonly PartId[] {
  return record.journal.positions.get(row.position)?.parts ?? [];
}
