/** What one position, or a decision about it, took in time and money. */
import type { Decision, IsoDate, Journal, Position, PositionId, SessionId } from '../model.ts';
import type { Entry, JournalRecord, Ledger } from '../record.ts';
import { keptIn, once } from '../values/once.ts';
import { type LedgerSource, type Sum, sumOf } from './sums.ts';
import { type Totals, totalsOf } from './totals.ts';

/** The job-cost entries of every position. */
const costIndex = once(({ entries }: Ledger): ReadonlyMap<PositionId, readonly Entry[]> => {
  const index = new Map<PositionId, Entry[]>();
  for (const entry of entries) {
    if (entry.position !== null && entry.cost) keptIn(index, entry.position, () => []).push(entry);
  }
  return index;
});

/** Job cost and hours of a position at a date: of every part that belongs to it. */
export function costOfPosition({ ledger }: Pick<LedgerSource, 'ledger'>, position: PositionId, at: IsoDate | null): Sum {
  const entries = costIndex(ledger).get(position) ?? [];
  return sumOf(at === null ? entries : entries.filter((entry) => entry.date <= at));
}

/** Hours and job cost of a position. */
export interface PositionTotals {
  readonly position: Position;
  readonly totals: Totals;
}

/** Every position that took hours or money, in the order of the catalogue. */
export function positionTotals({ journal, ledger }: LedgerSource): PositionTotals[] {
  const index = costIndex(ledger);
  return [...journal.positions.values()].flatMap((position) => {
    const entries = index.get(position.id);
    return entries ? [{ position, totals: totalsOf(entries) }] : [];
  });
}

/** What followed from the decisions of one session on a position, until the next one decided. */
export interface DecisionCost {
  /** Empty for what came before anything was decided. */
  readonly decisions: readonly Decision[];
  readonly sum: Sum;
}

/**
 * Cost and hours of a position by the decision that was in force: from the session that took it (its own
 * lines included) to the session before the next. Together they are the cost of the position.
 */
export function costByDecision(record: JournalRecord, position: PositionId, at: IsoDate | null): DecisionCost[] {
  const order = orderOfSessions(record.journal);
  const orderOf = (session: SessionId): number => order.get(session) ?? -1;
  const turns = turnsOf((record.history.decisions.get(position) ?? []).filter((one) => at === null || one.date <= at));
  const starts = turns.map((decisions) => orderOf(decisions[0]?.session ?? ''));
  const groups = turns.map((): Entry[] => []);
  const before: Entry[] = [];
  for (const entry of costOfPosition(record, position, at).entries) {
    const turn = starts.findLastIndex((start) => start <= orderOf(entry.session));
    (groups[turn] ?? before).push(entry);
  }
  const first: DecisionCost[] = before.length === 0 ? [] : [{ decisions: [], sum: sumOf(before) }];
  return [...first, ...turns.map((decisions, i) => ({ decisions, sum: sumOf(groups[i] ?? []) }))];
}

const orderOfSessions = once(
  ({ sessions }: Journal): ReadonlyMap<SessionId, number> => new Map(sessions.map((session, i) => [session.id, i])),
);

/** Decisions of one session belong together: a lot may be partly kept and partly replaced. */
function turnsOf(decisions: readonly Decision[]): Decision[][] {
  const turns: Decision[][] = [];
  for (const decision of decisions) {
    const last = turns.at(-1);
    if (last?.[0]?.session === decision.session) last.push(decision);
    else turns.push([decision]);
  }
  return turns;
}
