/** What is still to be done and paid, beside what is left of each budget. */
import Fraction from 'fraction.js';
import { type BudgetLine, budgets } from '../ledger/budgets.ts';
import { ledgerAt } from '../ledger/ledger-at.ts';
import { GENERAL, type IsoDate, type Minor, type PartId, type Subsystem, type SubsystemId } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { roundHalfAway } from '../values/decimal.ts';
import { type ItemRow, openItemsAt } from './open-items.ts';
import { type At, dateOf } from './source.ts';

/** Open items with their sum, and those that do not say how much, which are in no sum. */
export interface Ahead {
  readonly items: readonly ItemRow[];
  readonly sum: number;
  readonly unsaid: readonly ItemRow[];
}

/** A part that is out, and what was quoted for the work on it. */
export interface OutForWork {
  readonly part: PartId;
  readonly quoted: Minor;
}

export interface ToFinishRow {
  readonly subsystem: Subsystem;
  /** Things to buy, at the prices that were written down. */
  readonly toBuy: Ahead;
  /** What is waited for, at what was quoted. */
  readonly quoted: Ahead;
  /** Parts that are out for work, at what was quoted for it; they are in the sum of `quoted` too. */
  readonly out: readonly OutForWork[];
  /** Everything else that is open, in the minutes that were written down. */
  readonly work: Ahead;
  /** So far, without labour. */
  readonly spent: Minor;
  readonly money: BudgetLine | null;
  /** Minutes worked so far. */
  readonly worked: number;
  readonly hours: BudgetLine | null;
  /** So far, what was charged for labour, and the minutes that were. */
  readonly labour: { readonly cost: Minor; readonly minutes: number };
  /** The work ahead at what an hour here has cost so far; null where none was charged, or nothing is ahead. */
  readonly labourAhead: Minor | null;
  /** Spent and labour so far, with everything ahead that has a price: no less than this. */
  readonly willHaveCost: Minor;
}

/** One row a subsystem that something is open on or spent on, in declared order, at the end of a day. */
export function toFinish(record: JournalRecord, at: At): ToFinishRow[] {
  const date = dateOf(record, at);
  const open = Map.groupBy(openItemsAt(record, at), ({ on }): SubsystemId => on?.subsystem ?? GENERAL);
  const labour = Map.groupBy(
    record.ledger.entries.filter((entry) => entry.kind === 'labour' && entry.date <= date && entry.gross > 0),
    ({ subsystem }) => subsystem,
  );
  const out = Map.groupBy(outForWork(record, date), ({ part }): SubsystemId => record.journal.parts.get(part)?.subsystem ?? GENERAL);
  return budgets(record.journal, ledgerAt(record, date)).flatMap(({ subsystem, money, hours, worked, spent }) => {
    const items = open.get(subsystem.id) ?? [];
    const charged = labour.get(subsystem.id) ?? [];
    // A part that a waiting item with a price is on has been quoted for once, however often that is said.
    const awaited = new Set(items.flatMap(({ kind, price, on }) => (kind === 'waiting' && price !== null ? [on?.part ?? null] : [])));
    const quotes = (out.get(subsystem.id) ?? []).filter(({ part }) => !awaited.has(part));
    if (items.length === 0 && quotes.length === 0 && worked === 0 && spent === 0) return [];
    const sum = (figure: (entry: (typeof charged)[number]) => number): number => charged.reduce((all, entry) => all + figure(entry), 0);
    const so = { cost: sum(({ gross }) => gross), minutes: sum(({ minutes }) => minutes ?? 0) };
    const toBuy = ahead(
      items.filter(({ kind }) => kind === 'buy'),
      ({ price }) => price,
    );
    const waiting = ahead(
      items.filter(({ kind }) => kind === 'waiting'),
      ({ price }) => price,
    );
    const quoted = { ...waiting, sum: waiting.sum + quotes.reduce((all, one) => all + one.quoted, 0) };
    const work = ahead(
      items.filter(({ kind }) => kind !== 'buy' && kind !== 'waiting'),
      ({ hours: minutes }) => minutes,
    );
    const labourAhead = so.minutes === 0 || work.sum === 0 ? null : roundHalfAway(new Fraction(so.cost).mul(work.sum, so.minutes));
    const willHaveCost = spent + so.cost + toBuy.sum + quoted.sum + (labourAhead ?? 0);
    return [{ subsystem, toBuy, quoted, out: quotes, work, spent, money, worked, hours, labour: so, labourAhead, willHaveCost }];
  });
}

/** Parts that were sent out for a quoted sum and are still there at the end of a day. */
function outForWork({ history }: JournalRecord, date: IsoDate): OutForWork[] {
  return history.deeds.flatMap(({ part, did, session, date: on, entry }) => {
    if (did !== 'sent-out' || on > date || entry.quoted === null) return [];
    const isOut = (history.stays.get(part) ?? []).some(
      ({ where, from, to }) => where.at === 'out' && from.session === session && (to === null || to.date > date),
    );
    return isOut ? [{ part, quoted: entry.quoted }] : [];
  });
}

function ahead(items: readonly ItemRow[], figure: (item: ItemRow) => number | null): Ahead {
  const said = items.filter((item) => figure(item) !== null);
  return {
    items: said,
    sum: said.reduce((all, item) => all + (figure(item) ?? 0), 0),
    unsaid: items.filter((item) => figure(item) === null),
  };
}
