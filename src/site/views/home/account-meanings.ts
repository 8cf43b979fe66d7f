/** What the figures of hours, money and stuff mean, as far as a copy has them. */
import { html, type Markup } from '../page/html.ts';
import type { Sheet } from '../page/sheet.ts';
import { type AccountName, accountName, leavesHoursOut } from '../page/words.ts';

export interface Meaning {
  /** Its anchor. */
  readonly id: string;
  readonly title: string;
  readonly words: Markup;
}

/** In the order of the page. */
export function accountMeanings(sheet: Sheet): readonly Meaning[] {
  const kept = accountName(sheet);
  return [
    ...(sheet.figures.hasMoney ? ofMoney(sheet) : []),
    stock(sheet),
    ...(leavesHoursOut(sheet.copy) ? [] : [hours(sheet)]),
    ...(kept === 'Money' ? [BUDGETS] : []),
    ...(kept === null ? [] : [decisionCost(kept), PAST_DAY]),
  ];
}

function ofMoney(sheet: Sheet): readonly Meaning[] {
  const timed = !leavesHoursOut(sheet.copy);
  const [labour, together] = timed
    ? ['labour at its rate, ', 'Paid, labour and opening stock']
    : ['', 'This copy leaves hours out, and labour is in no sum. Paid and opening stock'];
  const ledger = html`<a href="${sheet.toPage('ledger')}">ledger</a>`;
  return [
    {
      id: 'money',
      title: 'Money',
      words: html`Amounts are in ${sheet.settings.currency}, gross, in whole minor units; each entry is rounded once, half away from zero, and gross is always net and tax together. What is split is shared out so that the shares add up exactly. A bill in another currency is entered at the rate on the note. Every figure is a sum of entries, and opens the entries it sums.`,
    },
    {
      id: 'two-views',
      title: 'Paid, and job cost',
      words: html`<i>Paid</i> is what went out on bills, by date, less what came in. <i>Job cost</i> is ${labour}parts, outside work, tools, carriage and fees, and consumables as they are used. ${together} together equal job cost and the consumables still on the shelf; the ${ledger} prints that line. What names no subsystem counts under General.`,
    },
  ];
}

function stock({ settings, figures: { hasMoney } }: Sheet): Meaning {
  const costed =
    settings.stock === 'fifo'
      ? 'Costed first in, first out: what was bought first is used first. '
      : 'Costed at the moving average: each purchase makes a new average price. ';
  const words = html`${hasMoney && costed}Opening and bought equal used and left, in quantity${hasMoney && ' and in money, to the minor unit'}.`;
  return { id: 'stock', title: 'Consumables', words };
}

function hours({ settings, figures: { hasMoney } }: Sheet): Meaning {
  const money = hasMoney && ', a budget of money against the job cost without labour';
  const words = html`Hours are elapsed time${hasMoney && ', paid or not'}; a clock range over midnight or a change of the clock counts what really passed in ${settings.timeZone}, on the day of its note. A budget of hours is held against everybody’s hours${money}.`;
  return { id: 'hours', title: 'Hours and budgets', words };
}

const BUDGETS: Meaning = {
  id: 'budgets',
  title: 'Budgets',
  words: html`A budget of money is held against the job cost without labour.`,
};

const FOLLOWED: Readonly<Record<AccountName, string>> = {
  'Hours and money': 'The hours and the job cost',
  Hours: 'The hours',
  Money: 'The job cost without labour',
};

function decisionCost(kept: AccountName): Meaning {
  const words = html`${FOLLOWED[kept]} charged to a position, from the note that took the decision, its own lines included, up to the note that decided again. Decisions of one note share one account; what came before the first stands apart. So the accounts of a position’s decisions add up to what the position took.`;
  return { id: 'decision-cost', title: 'What followed a decision', words };
}

const PAST_DAY: Meaning = {
  id: 'ledger-as-at',
  title: 'The ledger of a past day',
  words: html`At the end of each month in which something happened and on the day of each milestone the ledger is shown as it stood, from the notes up to then. Its figures open today’s books at the line that says what they had come to by that day.`,
};
