/** What is still to be done and paid, beside what is left of each budget. */
import Fraction from 'fraction.js';
import { type BudgetLine, budgets } from '../ledger/budgets.ts';
import { ledgerAt } from '../ledger/ledger-at.ts';
import { GENERAL, type Minor, type Subsystem, type SubsystemId } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { roundHalfAway } from '../values/decimal.ts';
import { type ItemRow, openItemsAt, takesHours } from './open-items.ts';
import { type QuotedWork, quotedWork } from './quoted.ts';
import { type At, dateOf } from './source.ts';

/** Open items with their sum, and those that do not say how much, which are in no sum. */
export interface Ahead {
  readonly items: readonly ItemRow[];
  readonly sum: number;
  readonly unsaid: readonly ItemRow[];
}

export interface ToFinishRow {
  readonly subsystem: Subsystem;
  /** Things to buy, and whatever else has a price and is not waited for, at the prices that were written down. */
  readonly toPay: Ahead;
  /** What is waited for, and the work that parts are out for, at what was quoted, less what was billed of it. */
  readonly quoted: Ahead;
  /** Every quote that is open. */
  readonly works: readonly QuotedWork[];
  /** Everything that is open and has hours, of whatever kind, in the minutes that were written down; work that has none is unsaid. */
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
  const quotes = Map.groupBy(
    quotedWork(record, at).filter((work) => work.open),
    ({ on }): SubsystemId => on.subsystem,
  );
  return budgets(record.journal, ledgerAt(record, date)).flatMap(({ subsystem, money, hours, worked, spent }) => {
    const items = open.get(subsystem.id) ?? [];
    const charged = labour.get(subsystem.id) ?? [];
    const works = quotes.get(subsystem.id) ?? [];
    if (items.length === 0 && works.length === 0 && worked === 0 && spent === 0) return [];
    const sum = (figure: (entry: (typeof charged)[number]) => number): number => charged.reduce((all, entry) => all + figure(entry), 0);
    const so = { cost: sum(({ gross }) => gross), minutes: sum(({ minutes }) => minutes ?? 0) };
    const toPay = ahead(
      items.filter(({ kind, price }) => kind === 'buy' || (kind !== 'waiting' && price !== null)),
      ({ price }) => price,
    );
    const waiting = ahead(
      items.filter(({ kind }) => kind === 'waiting'),
      ({ price }) => price,
    );
    // An item that is on nothing is no quote for anything, and counts by itself.
    const elsewhere = waiting.items.filter(({ on }) => on === null).reduce((all, { price }) => all + (price ?? 0), 0);
    const quoted = { ...waiting, sum: elsewhere + works.reduce((all, one) => all + Math.max(0, one.quoted - one.billed.gross), 0) };
    const work = ahead(items.filter(takesHours), ({ hours: minutes }) => minutes);
    const labourAhead = so.minutes === 0 || work.sum === 0 ? null : roundHalfAway(new Fraction(so.cost).mul(work.sum, so.minutes));
    const willHaveCost = spent + so.cost + toPay.sum + quoted.sum + (labourAhead ?? 0);
    return [{ subsystem, toPay, quoted, works, work, spent, money, worked, hours, labour: so, labourAhead, willHaveCost }];
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
