/** Tables of ledger entries: in a book, in the account of a session, on a position. A blank is not a nought: the entry does not count in that column. */
import { type Totals, totalsOf } from '../../../journal/ledger/totals.ts';
import type { Bill, Received } from '../../../journal/model.ts';
import type { Entry } from '../../../journal/record.ts';
import { paperOfBill } from '../page/facts.ts';
import { html, type Markup, type Piece } from '../page/html.ts';
import { chargeLink, linked, sub } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { accountName, capital, ENTRY_KIND_WORDS, leavesHoursOut, listed, VERDICT_WORDS } from '../page/words.ts';
import { paperFacts } from '../papers/papers.ts';
import type { DecisionAccount } from '../position/decision-costs.ts';
import { type Column, type Line, rows, type SetTable, setTable } from '../tables/table.ts';
import type { Section } from './entry-books.ts';
import { entryAddress, entryAnchor } from './entry-place.ts';
import { foreignWords } from './foreign.ts';
import { type RunningTotal, runningAnchor } from './running-totals.ts';

type EntryColumn = Column<Entry, Totals>;

/** The entries of a section of a book, with their total; running totals stand under the last entry they sum. */
export function sectionTable(sheet: Sheet, { title, entries }: Section, running: readonly RunningTotal[]): SetTable {
  const under = new Map(running.map((total) => [total.last, runningLine(sheet, total)]));
  const { figures } = sheet;
  const timed = !leavesHoursOut(sheet.copy);
  const { date, what, kind, on, hours, paid, cost } = columnsOf(sheet);
  return setTable<Entry, Totals>({
    label: `Entries, ${title}`,
    set: 'entries',
    columns: [date, what, kind, on, timed && hours, figures.hasMoney && paid, figures.hasMoney && cost],
    groups: rows<Entry, Totals>(entries),
    data: ({ subsystem }) => ({ on: subsystem }),
    under: (entry) => under.get(entry),
    foot: footOf(sheet, title, entries),
  });
}

/**
 * The account of a session, where each entry is at home and carries its anchor.
 *
 * @param bills of the session: who was paid stands under what was bought
 */
export function sessionAccount(sheet: Sheet, entries: readonly Entry[], bills: readonly Bill[], label: string): SetTable {
  const sellers = new Map(bills.map(({ id, from }) => [id, from]));
  const { figures } = sheet;
  const timed = !leavesHoursOut(sheet.copy);
  const { kind, on, hours, paid, cost } = columnsOf(sheet);
  const what: EntryColumn = {
    head: 'What',
    set: 'what',
    bare: true,
    cell: (entry) => {
      const paper = paperOf(sheet, entry);
      const seller = entry.bill === null ? null : (sellers.get(entry.bill) ?? null);
      return html`${entry.what}${seller !== null && sub(`from ${seller}`)}${underWhat(sheet, entry)}${paper !== null && html`<a class="sub" href="${paper}">Its paper</a>`}`;
    },
  };
  return setTable<Entry, Totals>({
    label,
    caption: inCurrency(sheet, label),
    set: 'entries',
    columns: [what, kind, on, timed && hours, figures.hasMoney && paid, figures.hasMoney && cost],
    groups: rows<Entry, Totals>(entries),
    anchor: entryAnchor,
    foot: footOf(sheet, 'Total', entries),
  });
}

/** What entries come to; no line where the copy has neither hours nor money to add up. */
const footOf = (sheet: Sheet, words: string, entries: readonly Entry[]): readonly Line<Totals>[] =>
  accountName(sheet) === null ? [] : [{ words, sum: totalsOf(entries) }];

/** What a position took, by the decision in force; the sums add up to the whole. */
export function positionAccount(sheet: Sheet, name: string, accounts: readonly DecisionAccount[]): SetTable {
  const { date, what, kind, hours, cost } = columnsOf(sheet);
  const label = `${sheet.figures.hasMoney ? 'Job cost' : 'Hours'} of ${name}`;
  const decided = accounts.some(({ decisions }) => decisions.length > 0);
  const headOf = (account: DecisionAccount): Line<Totals> => ({
    words: fromDecision(sheet, account),
    id: account.id,
    set: 'month-total',
    sum: totalsOf(account.entries),
  });
  return setTable<Entry, Totals>({
    label,
    caption: inCurrency(sheet, label),
    set: 'entries of-position',
    columns: [date, what, kind, !leavesHoursOut(sheet.copy) && hours, sheet.figures.hasMoney && cost],
    groups: accounts.map((account) => ({ head: decided ? headOf(account) : null, rows: account.entries })),
    foot: [{ words: 'Total', sum: totalsOf(accounts.flatMap(({ entries }) => entries)) }],
  });
}

const inCurrency = ({ settings: { currency } }: Sheet, label: string): string => {
  return currency === null ? label : `${label}, in ${currency}`;
};

/** What came in, from whom and what for: `£500.00 from the owner, deposit.` */
export function receivedWords({ figures }: Sheet, { amount, from, for: what }: Pick<Received, 'amount' | 'from' | 'for'>): string {
  return `${figures.money(amount)} from ${from}${what === null ? '' : `, ${what}`}.`;
}

/** The columns of entries; what a table leaves out, it leaves out whole. */
function columnsOf(sheet: Sheet): Readonly<Record<'date' | 'what' | 'kind' | 'on' | 'hours' | 'paid' | 'cost', EntryColumn>> {
  const { figures } = sheet;
  const time = (minutes: number | null): Piece => minutes !== null && minutes > 0 && figures.time(minutes);
  return {
    date: { head: 'Date', set: 'date', bare: true, cell: (entry) => figures.shortDate(entry.date) },
    what: {
      head: 'What',
      set: 'what',
      bare: true,
      cell: (entry) => html`${linked(entry.what, sheet.link(entryAddress(entry)))}${underWhat(sheet, entry)}`,
    },
    kind: { head: 'Kind', set: 'kind', bare: true, cell: (entry) => capital(ENTRY_KIND_WORDS[entry.kind]) },
    on: { head: 'Charged to', set: 'on', bare: true, cell: (entry) => chargeLink(sheet, entry) },
    hours: { head: 'Hours', set: 'num hours', cell: ({ minutes }) => time(minutes), sum: ({ minutes }) => time(minutes) },
    paid: {
      head: 'Paid',
      set: 'num paid',
      cell: (entry) => entry.paid && figures.amount(entry.gross),
      sum: (totals) => figures.amount(totals.paid),
    },
    cost: {
      head: 'Job cost',
      set: 'num cost',
      cell: (entry) => entry.cost && figures.amount(entry.gross),
      sum: (totals) => figures.amount(totals.cost),
    },
  };
}

/** Who worked, and what the bill has in its own currency. */
function underWhat(sheet: Sheet, { person, foreign }: Entry): Markup {
  return html`${person !== null && sub(sheet.personName(person))}${foreign !== null && sub(foreignWords(sheet, foreign))}`;
}

/** The address of the paper of the bill that an entry was paid by. */
function paperOf(sheet: Sheet, { bill }: Entry): string | null {
  const file = bill === null ? null : paperOfBill(sheet, bill);
  return file === null ? null : (paperFacts(sheet, file)?.href ?? null);
}

function runningLine({ figures }: Sheet, total: RunningTotal): Line<Totals> {
  const without = figures.hasMoney ? `; without labour ${figures.amount(total.totals.costWithoutLabour)}` : '';
  return {
    words: `All up to ${figures.date(total.last.date)}${without}`,
    sum: total.totals,
    id: runningAnchor(total),
    set: 'running-total by-the-way',
  };
}

function fromDecision(sheet: Sheet, { numbers, decisions }: DecisionAccount): string {
  const [first] = decisions;
  if (first === undefined) return 'Before anything was decided';
  const verdicts = listed(decisions.map(({ verdict }) => VERDICT_WORDS[verdict]));
  return `From decision ${listed(numbers.map(String))} on, ${verdicts}, ${sheet.date(first.date)}`;
}
