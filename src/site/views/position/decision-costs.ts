/** Hours and cost of a position by the decision in force, with the anchors and words the page has for them. */
import { costByDecision } from '../../../journal/ledger/of-position.ts';
import type { Decision, PositionId } from '../../../journal/model.ts';
import type { Entry, JournalRecord } from '../../../journal/record.ts';
import type { Figures } from '../page/figures.ts';
import type { Sheet } from '../page/sheet.ts';
import { accountName, listed, NOTHING_CHARGED } from '../page/words.ts';

export interface DecisionAccount {
  /** Its anchor on the page of the position. */
  readonly id: string;
  /** Numbers of the decisions, as the history has them; none for what came before the first. */
  readonly numbers: readonly number[];
  readonly decisions: readonly Decision[];
  readonly minutes: number;
  readonly cost: number;
  /** Without money those alone that took time: what was bought has nothing to tell. */
  readonly entries: readonly Entry[];
}

/** @param decided every decision on the position, in the order in which the history numbers them */
export function decisionAccounts(record: JournalRecord, position: PositionId, decided: readonly Decision[]): DecisionAccount[] {
  const hasMoney = record.journal.settings.currency !== null;
  const numbers = new Map(decided.map(({ id }, n) => [id, n + 1]));
  return costByDecision(record, position, null).map(({ decisions, sum }) => ({
    id: decisions.length === 0 ? 'cost-before' : `cost-${numbers.get(decisions[0]?.id ?? '')}`,
    numbers: decisions.flatMap(({ id }) => numbers.get(id) ?? []),
    decisions,
    minutes: sum.minutes,
    cost: sum.gross,
    entries: hasMoney ? sum.entries : sum.entries.filter(({ minutes }) => (minutes ?? 0) > 0),
  }));
}

/** The hours and money of an account; '' where the copy tells of neither. */
function figuresIn({ time, money, hasMoney }: Figures, { minutes, cost, entries }: DecisionAccount): string {
  return [minutes > 0 && time(minutes), hasMoney && entries.length > 0 && money(cost)].filter((words) => words !== false).join(', ');
}

/** What is said of the cost of a decision. */
export interface FollowedWords {
  readonly before: string;
  /** Empty where nothing was charged; they lead to the account. */
  readonly figures: string;
  readonly after: string;
  readonly account: DecisionAccount | undefined;
}

/** @returns null where the copy keeps account of nothing */
export function followedWords(
  sheet: Pick<Sheet, 'copy' | 'figures'>,
  accounts: readonly DecisionAccount[],
  decision: Decision,
): FollowedWords | null {
  const kept = accountName(sheet);
  if (kept === null) return null;
  const account = accounts.find(({ decisions }) => decisions.includes(decision));
  const said = account && figuresIn(sheet.figures, account);
  if (account === undefined || !said) {
    const until = account === accounts.at(-1) ? 'since' : 'before the next decision';
    return { before: `${NOTHING_CHARGED[kept]} to it ${until}.`, figures: '', after: '', account };
  }
  const others = account.numbers.filter((_, n) => account.decisions[n] !== decision).map(String);
  const together = others.length === 0 ? '' : `, together with decision ${listed(others)}`;
  const against = account.entries.some(({ kind }) => kind === 'sale') ? ', what was sold set against it' : '';
  return { before: 'What followed took ', figures: said, after: `${together}${against}.`, account };
}
