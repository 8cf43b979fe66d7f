/** Hours and cost of a position by the decision in force, with the anchors and words the page has for them. */
import { costByDecision } from '../../../journal/ledger/of-position.ts';
import type { Decision, PositionId } from '../../../journal/model.ts';
import type { Entry, JournalRecord } from '../../../journal/record.ts';

export interface DecisionAccount {
  /** Its anchor on the page of the position. */
  readonly id: string;
  /** Numbers of the decisions, as the history has them; none for what came before the first. */
  readonly numbers: readonly number[];
  readonly decisions: readonly Decision[];
  readonly minutes: number;
  readonly cost: number;
  readonly entries: readonly Entry[];
}

/** @param decided every decision on the position, in the order in which the history numbers them */
export function decisionAccounts(record: JournalRecord, position: PositionId, decided: readonly Decision[]): DecisionAccount[] {
  const numbers = new Map(decided.map(({ id }, n) => [id, n + 1]));
  return costByDecision(record, position, null).map(({ decisions, sum }) => ({
    id: decisions.length === 0 ? 'cost-before' : `cost-${numbers.get(decisions[0]?.id ?? '')}`,
    numbers: decisions.flatMap(({ id }) => numbers.get(id) ?? []),
    decisions,
    minutes: sum.minutes,
    cost: sum.gross,
    entries: sum.entries,
  }));
}
