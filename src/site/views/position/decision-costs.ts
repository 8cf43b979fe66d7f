/** Hours and cost of a position by the decision in force, with the anchors and words the page has for them. */
import { costByDecision } from '../../../journal/ledger/of-position.ts';
import type { Decision, PositionId } from '../../../journal/model.ts';
import type { Entry, JournalRecord } from '../../../journal/record.ts';
import { listed } from '../page/words.ts';

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

/** What is said of the cost of a decision. */
export interface FollowedWords {
  readonly before: string;
  /** Empty where nothing was charged; they lead to the account. */
  readonly figures: string;
  readonly after: string;
  readonly account: DecisionAccount | undefined;
}

/** @param figuresIn the hours and money of an account as the page writes them */
export function followedWords(
  accounts: readonly DecisionAccount[],
  decision: Decision,
  figuresIn: (account: DecisionAccount) => string,
): FollowedWords {
  const account = accounts.find(({ decisions }) => decisions.includes(decision));
  if (account === undefined || account.entries.length === 0) {
    const until = account === accounts.at(-1) ? 'since' : 'before the next decision';
    return { before: `Nothing was charged to it ${until}.`, figures: '', after: '', account };
  }
  const others = account.numbers.filter((_, n) => account.decisions[n] !== decision).map(String);
  const together = others.length === 0 ? '' : `, together with decision ${listed(others)}`;
  const against = account.entries.some(({ kind }) => kind === 'sale') ? ', what was sold set against it' : '';
  return { before: 'What followed took ', figures: figuresIn(account), after: `${together}${against}.`, account };
}
