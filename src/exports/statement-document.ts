/** A client statement in words and tables, before it becomes a page or a typeset sheet. Pure. */
import { WORK } from '../journal/ledger/ledger.ts';
import {
  linesOf,
  type Statement,
  type StatementGroup,
  type StatementLine,
  type StatementSum,
  sumLines,
} from '../journal/ledger/statement.ts';
import {
  type EntryKind,
  type HeadLine,
  type IsoDate,
  type Journal,
  type Minor,
  type PaidAtTax,
  type Settings,
  SOMEBODY,
} from '../journal/model.ts';
import { formatMinutes, formatMoney } from '../journal/values/money.ts';
import { saysSomething, type ToldLine, withAlikeJoined } from './alike-lines.ts';
import { dayWords, headOf, joined } from './statement-head.ts';
import { soldWords, standingWords } from './tax-words.ts';

export interface DocumentColumn {
  readonly name: string;
  readonly side: 'text' | 'date' | 'figure';
}

export interface DocumentTable {
  /** One word for it: a kind, `hours`, `received`. */
  readonly id: string;
  readonly title: string;
  readonly columns: readonly DocumentColumn[];
  readonly rows: readonly (readonly string[])[];
  readonly foot: readonly string[] | null;
  /** The entry that each row is, where it is one. */
  readonly entries?: readonly string[];
}

export interface StatementDocument {
  readonly locale: string;
  readonly title: string;
  /** Who sends it and to whom, the vehicle, references: a line each. */
  readonly head: readonly HeadLine[];
  readonly tables: readonly DocumentTable[];
  readonly notes: readonly string[];
}

/** What a kind of entry is called on a statement. */
export const KIND_WORDS: Readonly<Record<EntryKind, string>> = {
  labour: 'Labour',
  part: 'Parts',
  consumable: 'Consumables, as used',
  'outside-work': 'Outside work',
  tool: 'Tools',
  carriage: 'Carriage',
  fee: 'Fees',
  vehicle: 'The vehicle itself',
  sale: 'Sold, set against the cost',
};

/** What it names: subsystems and people by their names, days as the journal's locale writes them. */
export type StatementNames = Pick<Journal, 'settings' | 'subsystems' | 'people'>;

/** What the client sees: purchase prices and mark-up only where journal.yaml says so. */
export function statementDocument(statement: Statement, journal: StatementNames): StatementDocument {
  const words = wordsOf(journal, statement);
  const { settings } = journal;
  const number = statement.number === null ? '' : ` ${statement.number}`;
  return {
    locale: settings.locale,
    title: `Statement${number}, ${words.day(statement.from)} to ${words.day(statement.to)}`,
    head: headOf(statement, settings),
    tables: [
      ...hoursTables(statement, words),
      ...statement.groups.flatMap((group) => groupTables(group, words)),
      ...notChargedTables(statement, words),
      ...taxTables(statement, words),
      togetherTable(statement, words),
      ...receivedTables(statement, words),
      accountTable(statement, words),
    ],
    notes: notesOf(statement),
  };
}

/** How one statement writes its figures and names, and what of them it shows. */
interface Words {
  readonly settings: Settings;
  readonly shows: Statement['shows'];
  /** Tax is charged. */
  readonly taxed: boolean;
  money(minor: Minor): string;
  day(date: IsoDate): string;
  subsystem(id: string): string;
  person(id: string | null): string;
}

function wordsOf({ settings, subsystems, people }: StatementNames, { shows, registered: taxed }: Statement): Words {
  return {
    settings,
    shows,
    taxed,
    money: (minor) => formatMoney(minor, settings),
    day: (date) => dayWords(date, settings.locale),
    subsystem: (id) => subsystems.get(id)?.name ?? id,
    person: (id) => people.get(id ?? '')?.name ?? '',
  };
}

const text = (name: string): DocumentColumn => ({ name, side: 'text' });
const figure = (name: string): DocumentColumn => ({ name, side: 'figure' });
const DAY: DocumentColumn = { name: 'Day', side: 'date' };

/** The columns of money, each with the figure in it: what was paid and the mark-up only where they are to be seen. */
function amounts({ shows, taxed }: Words): readonly (readonly [name: string, of: (sum: Omit<StatementSum, 'minutes'>) => Minor])[] {
  const markUp = shows.includes('mark-up');
  return [
    ...(shows.includes('costs') ? [['Cost', (sum: Omit<StatementSum, 'minutes'>) => sum.cost] as const] : []),
    ...(markUp
      ? [
          ['Before mark-up', (sum: Omit<StatementSum, 'minutes'>) => sum.net] as const,
          ['Mark-up', (sum: Omit<StatementSum, 'minutes'>) => sum.markUp] as const,
        ]
      : []),
    ...(taxed
      ? [
          ['Net', (sum: Omit<StatementSum, 'minutes'>) => sum.net + sum.markUp] as const,
          ['Tax', (sum: Omit<StatementSum, 'minutes'>) => sum.tax] as const,
        ]
      : []),
    ['Charged', (sum) => sum.charged],
  ];
}

function hoursTables({ hours }: Statement, words: Words): DocumentTable[] {
  // Where nobody is named a rate would tell who worked; the sum of all stands with the work.
  if (hours.length === 0 || hours.some(({ person }) => person === SOMEBODY)) return [];
  const sum = (of: 'minutes' | 'charged'): number => hours.reduce((all, one) => all + one.sum[of], 0);
  const rows = hours.map(({ person, perHour, sum: { minutes, charged } }) => [
    words.person(person),
    perHour === null ? '' : `${words.money(perHour)} an hour${words.taxed ? ', without tax' : ''}`,
    formatMinutes(minutes),
    words.money(charged),
  ]);
  const foot = ['Sum', '', formatMinutes(sum('minutes')), words.money(sum('charged'))];
  return [{ id: 'hours', title: 'Hours', columns: [text('Person'), text('Rate'), figure('Time'), figure('Charged')], rows, foot }];
}

type SaidOfLine = Pick<StatementLine, 'kind' | 'what' | 'title' | 'notCharged'>;

/** What a line is of: of labour what was done, in the words of its note's title, and when. Without the reason why it is not charged, which stands beside it. */
export function lineWords({ what, title, notCharged }: Omit<SaidOfLine, 'kind'>): string {
  const reason = `; not charged: ${notCharged}`;
  const said = notCharged !== null && what.endsWith(reason) ? what.slice(0, -reason.length) : what;
  return title === null || !said.startsWith(WORK) ? said : `${title.replace(/\.$/, '')}${said.slice(WORK.length)}`;
}

/** The same, and who did it. */
export function workWords(line: SaidOfLine, person: string | null): string {
  const said = lineWords(line);
  const { kind } = line;
  return kind === 'labour' && person !== null && person !== '' ? `${person}: ${said}` : said;
}

function whatOf({ line, entries }: ToldLine, words: Words): string {
  const said = workWords(line, words.person(line.person));
  return lateWords(entries === 1 ? said : `${said} (${entries} entries)`, line.late);
}

const lateWords = (said: string, late: boolean): string => (late ? `${said} (late: of an earlier statement’s time)` : said);

function groupTables({ kind, lines, sum }: StatementGroup, words: Words): DocumentTable[] {
  const time = (minutes: number): string[] => (kind === 'labour' ? [formatMinutes(minutes)] : []);
  const columns = amounts(words);
  const told = withAlikeJoined(lines).filter(({ line }) => saysSomething(line, words.shows));
  if (told.length === 0) return [];
  const table = {
    id: kind,
    title: KIND_WORDS[kind],
    entries: told.map(({ line }) => line.entry),
    columns: [DAY, text('What'), text('Subsystem'), ...time(0).map(() => figure('Time')), ...columns.map(([name]) => figure(name))],
    rows: told.map((one) => [
      words.day(one.line.date),
      whatOf(one, words),
      words.subsystem(one.line.subsystem),
      ...time(one.line.minutes ?? 0),
      ...columns.map(([, of]) => words.money(of(one.line))),
    ]),
    foot: ['', 'Sum', '', ...time(sum.minutes), ...columns.map(([, of]) => words.money(of(sum)))],
  };
  return [table];
}

function notChargedTables({ notCharged }: Statement, words: Words): DocumentTable[] {
  if (!words.shows.includes('not-charged') || notCharged.length === 0) return [];
  const told = withAlikeJoined(notCharged);
  const rows = told.map((one) => [
    words.day(one.line.date),
    whatOf(one, words),
    one.line.minutes === null ? '' : formatMinutes(one.line.minutes),
    begun(one.line.notCharged ?? ''),
  ]);
  const entries = told.map(({ line }) => line.entry);
  return [
    { id: 'not-charged', title: 'Not charged', columns: [DAY, text('What'), figure('Time'), text('Why')], rows, foot: null, entries },
  ];
}

/** A reason as the head of its cell. */
const begun = (reason: string): string => reason.charAt(0).toLocaleUpperCase() + reason.slice(1);

function taxTables(statement: Statement, words: Words): DocumentTable[] {
  const { taxes, inside } = statement;
  const row = (of: string, { net, markUp, tax, charged: gross }: Omit<StatementSum, 'minutes' | 'cost'>) => [
    of,
    ...[net + markUp, tax, gross].map(words.money),
  ];
  const rated = taxes.map(({ rate, sold, sum }) => row(paidWords({ standing: 'rated', rate, sold }), sum));
  // What was sold without tax is charged too, as a credit: without it the rows would not come to the sum.
  const rest = linesOf(statement).filter(({ kind, rate, notCharged }) => kind === 'sale' && rate === null && notCharged === null);
  const charged = rated.length === 0 || rest.length === 0 ? rated : [...rated, row('Sold, without tax', sumLines(rest))];
  const columns = [text('Rate'), ...['Net', 'Tax', 'Gross'].map(figure)];
  const bought = words.shows.includes('costs') ? inside : [];
  const paid = bought.map((row) => [paidWords(row), ...[row.net, row.tax, row.gross].map(words.money)]);
  return [
    ...(charged.length === 0 ? [] : [{ id: 'tax-charged', title: 'Tax, inside the amounts charged', columns, rows: charged, foot: null }]),
    ...(paid.length === 0 ? [] : [{ id: 'tax-paid', title: 'Tax, inside what was paid', columns, rows: paid, foot: null }]),
  ];
}

function paidWords(row: Pick<PaidAtTax, 'standing' | 'rate' | 'sold'>): string {
  return row.sold ? soldWords(row) : standingWords(row);
}

function togetherTable({ sum }: Statement, words: Words): DocumentTable {
  const columns = amounts(words).filter(([name]) => name !== 'Cost' && name !== 'Charged');
  return {
    id: 'together',
    title: 'Together',
    columns: [text(''), figure('Amount')],
    rows: columns.map(([name, of]) => [name, words.money(of(sum))]),
    foot: ['Charged', words.money(sum.charged)],
  };
}

function receivedTables({ received }: Statement, words: Words): DocumentTable[] {
  if (received.length === 0) return [];
  const rows = received.map(({ date, from, for: what, amount, late }) => [
    words.day(date),
    lateWords(joined([from, what]) ?? '', late),
    words.money(amount),
  ]);
  const sum = received.reduce((all, { amount }) => all + amount, 0);
  return [{ id: 'received', title: 'Received', columns: [DAY, text('From'), figure('Amount')], rows, foot: ['', 'Sum', words.money(sum)] }];
}

function accountTable({ account, to }: Statement, words: Words): DocumentTable {
  const { stated, open, received, owed, since } = account;
  const rows = [
    ['On statements that were sent', words.money(stated)],
    ['On none yet', words.money(open)],
    ['Received', words.money(-received)],
  ];
  const left =
    owed < 0
      ? ['In hand', words.money(-owed)]
      : [since === null ? 'To pay' : `To pay, the oldest since ${words.day(since)}`, words.money(owed)];
  return { id: 'account', title: `The account on ${words.day(to)}`, columns: [text(''), figure('Amount')], rows, foot: left };
}

function notesOf({ groups, registered }: Statement): string[] {
  const nothing = groups.length === 0 ? ['Nothing of these days is charged on this statement.'] : [];
  const invoice = registered ? [] : ['This is a statement of account, no tax invoice.'];
  return [...nothing, 'Each line is an entry of the ledger, or several that read alike, and says the day of its note.', ...invoice];
}
