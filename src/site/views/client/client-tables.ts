/** The account with the client as tables: where it stands, what was charged of each kind, what was sent, what came in, what is owed. */
import { KIND_WORDS, workWords } from '../../../exports/statement-document.ts';
import type { Statement, StatementLine } from '../../../journal/ledger/statement.ts';
import type { ReceivedEntry } from '../../../journal/record.ts';
import { daysBetween, monthOf } from '../../../journal/values/date.ts';
import { CLIENT_SINCE, clientStatementAddress, dataAddress, sessionAddress } from '../../addresses.ts';
import { html } from '../page/html.ts';
import { linked, sub } from '../page/links.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { counted } from '../page/words.ts';
import { type Column, rows, type SetTable, setTable } from '../tables/table.ts';
import type { ClientPage, KindCharged } from './client-page.ts';

interface Line {
  readonly words: string;
  readonly amount: number;
  readonly to: string | null;
}

/** @param to where each line leads: the sections of the page, or the page itself */
export function standingTable(sheet: Sheet, page: ClientPage, to: (section: string) => string): SetTable {
  const { figures } = sheet;
  const { account, sent } = page;
  const { stated, open, received } = account;
  const lines: readonly Line[] = [
    {
      words:
        sent.length === 0
          ? 'On statements: none was sent yet'
          : `Charged on ${counted(sent.length, 'statement')} that ${sent.length === 1 ? 'was' : 'were'} sent`,
      amount: stated,
      to: to('statements'),
    },
    { words: 'Charged since, on no statement yet', amount: open, to: to('charged') },
    { words: 'Received', amount: -received, to: to('received') },
  ];
  return setTable<Line, number>({
    label: `The account on ${figures.date(sheet.day)}`,
    set: 'account totals client',
    keepsRows: true,
    columns: [
      { head: `The account on ${figures.shortDate(sheet.day)}`, names: true, cell: ({ words }) => words },
      {
        head: 'Amount',
        set: 'num',
        cell: ({ amount, to: page }) => linked(figures.amount(amount || 0), page),
        sum: (sum) => figures.amount(sum),
      },
    ],
    groups: rows<Line, number>(lines),
    foot: leftOver(sheet, page),
  });
}

/** What is left to pay, statements that were sent and what is on none yet apart; or what is in hand. */
function leftOver(sheet: Sheet, page: ClientPage): { readonly words: string; readonly sum: number }[] {
  if (page.account.owed < 0) return [{ words: 'In hand', sum: -page.account.owed }];
  const { sent, notSent } = leftOf(page);
  return [{ words: owedWords(sheet, page), sum: sent }, ...(notSent === 0 ? [] : [{ words: 'Not yet on a statement', sum: notSent }])];
}

/** What is owed on statements, and what was charged beyond what came in and is on none yet. */
function leftOf({ dues }: Pick<ClientPage, 'dues'>): { readonly sent: number; readonly notSent: number } {
  const [sent, notSent] = [dues.filter(({ statement }) => statement !== null), dues.filter(({ statement }) => statement === null)];
  const sum = (list: ClientPage['dues']): number => list.reduce((all, { left }) => all + left, 0);
  return { sent: sum(sent), notSent: sum(notSent) };
}

/** `Owed, the oldest since 30 June 2025: 171 days`. */
function owedWords({ day, figures }: Sheet, { account: { since } }: ClientPage): string {
  if (since === null) return 'Nothing is owed';
  return since === day ? 'Owed, of this day' : `Owed, the oldest since ${figures.date(since)}: ${counted(daysBetween(since, day), 'day')}`;
}

/** The same as a sentence, with the amount; what is on no statement yet is told apart, and is of no age. */
export function owedSentence(sheet: Sheet, page: Pick<ClientPage, 'account' | 'dues'>): string {
  const { day, figures } = sheet;
  const { owed, since, received, stated } = page.account;
  if (owed < 0) return `${figures.money(-owed)} is in hand.`;
  const { sent, notSent } = leftOf(page);
  const beyond = received > stated ? ' beyond what came in' : '';
  const rest = notSent === 0 ? '' : ` ${figures.money(notSent)} was charged${beyond} that is not yet on a statement.`;
  if (since === null) return `Nothing is owed${notSent === 0 ? '' : ' yet'}.${rest}`;
  if (since === day) return `${figures.money(sent)} is owed, all of it of that day.${rest}`;
  return `${figures.money(sent)} is owed, the oldest of it since ${figures.date(since)}, ${counted(daysBetween(since, day), 'day')}.${rest}`;
}

/** What was charged of each kind: on statements that were sent and since, and what of it is mark-up and tax. */
export function chargedTable(sheet: Sheet, { kinds, shows, taxed, sent }: ClientPage): SetTable {
  const { hours, amount } = sheet.figures;
  type Sums = readonly KindCharged[];
  const figure = (
    head: string,
    of: (one: KindCharged) => number,
    to: (one: KindCharged) => string | null = () => null,
  ): Column<KindCharged, Sums> => ({
    head,
    set: 'num',
    cell: (one) => (of(one) === 0 ? false : linked(amount(of(one)), to(one))),
    sum: (all) => amount(all.reduce((sum, one) => sum + of(one), 0)),
  });
  return setTable<KindCharged, Sums>({
    label: 'What was charged',
    caption: `In ${sheet.settings.currency}. What is on a statement opens it; what was charged since opens its lines.`,
    set: 'account totals by-kind',
    columns: [
      { head: 'What for', names: true, cell: ({ kind }) => KIND_WORDS[kind] },
      {
        head: 'Hours',
        set: 'num',
        cell: ({ minutes }) => minutes !== 0 && hours(minutes),
        sum: (all) => hours(all.reduce((sum, one) => sum + one.minutes, 0)),
      },
      sent.length > 0 &&
        figure(
          'On statements',
          (one) => one.sent,
          () => '#statements',
        ),
      figure(
        'Since',
        (one) => one.since,
        ({ kind }) => sheet.link(`${CLIENT_SINCE}#${kind}`),
      ),
      shows.includes('mark-up') && figure('Before mark-up', ({ net }) => net),
      shows.includes('mark-up') && figure('Mark-up', ({ markUp }) => markUp),
      taxed && figure('Without tax', ({ net, markUp }) => net + markUp),
      taxed && figure('Tax', ({ tax }) => tax),
      figure('Charged', ({ charged }) => charged),
    ],
    groups: rows<KindCharged, Sums>(kinds),
    foot: [{ words: 'Together', sum: kinds }],
  });
}

/** The statements that were sent, each opening its lines, and what is on none yet, where there is any. */
export function statementsTable(sheet: Sheet, { sent, since }: ClientPage): SetTable {
  const { figures } = sheet;
  const isAllSent = sent.length > 0 && since.groups.length === 0 && since.received.length === 0;
  const listed = isAllSent ? sent : [...sent, since];
  const words = ({ number }: Statement): string => (number === null ? 'Since, not sent yet' : `Statement ${number}`);
  const to = ({ number }: Statement): string => sheet.link(number === null ? CLIENT_SINCE : clientStatementAddress(number));
  return setTable<Statement, number>({
    label: 'Statements',
    set: 'account totals statements',
    columns: [
      { head: 'Statement', names: true, cell: (one) => linked(words(one), to(one)) },
      { head: 'Work of', cell: ({ from, to: last }) => `${figures.shortDate(from)} to ${figures.shortDate(last)}` },
      { head: 'Charged', set: 'num', cell: (one) => linked(figures.amount(one.sum.charged), to(one)), sum: (sum) => figures.amount(sum) },
      {
        head: 'To download',
        set: 'on-screen',
        cell: ({ number }) => number !== null && html`<a href="${sheet.link(dataAddress(`statement-${number}.csv`))}">CSV</a>`,
      },
    ],
    groups: rows<Statement, number>(listed),
    foot: [{ words: 'Together', sum: [...sent, since].reduce((sum, one) => sum + one.sum.charged, 0) }],
  });
}

/** Money that came in, each opening its note. */
export function receivedTable(sheet: Sheet, received: readonly ReceivedEntry[]): SetTable {
  const { figures } = sheet;
  return setTable<ReceivedEntry, number>({
    label: 'Received',
    set: 'account totals listed',
    keepsRows: true,
    columns: [
      { head: 'Day', set: 'date', cell: ({ date, session }) => linked(figures.shortDate(date), sheet.link(sessionAddress(session))) },
      { head: 'From', names: true, cell: ({ from, for: what }) => html`${from}${sub(what)}` },
      { head: 'Amount', set: 'num', cell: ({ amount }) => figures.amount(amount), sum: (sum) => figures.amount(sum) },
    ],
    groups: rows<ReceivedEntry, number>(received),
    foot: [{ words: 'Together', sum: received.reduce((sum, { amount }) => sum + amount, 0) }],
  });
}

interface Owed {
  readonly words: string;
  /** Since when it is owed; null where it is on no statement yet. */
  readonly date: string | null;
  readonly to: string;
  readonly left: number;
}

/** What is owed by its age: a statement a line; then what is on none yet by its months, which is of no age. */
export function owedTable(sheet: Sheet, { dues, account }: Pick<ClientPage, 'dues' | 'account'>): SetTable {
  const { figures, day } = sheet;
  const groups = Map.groupBy(dues, ({ statement, date }) => (statement === null ? monthOf(date) : `statement ${statement}`));
  const list = [...groups.values()].map((of): Owed => {
    const { statement = null, date = day } = of[0] ?? {};
    const left = of.reduce((sum, one) => sum + one.left, 0);
    if (statement !== null) return { words: `Statement ${statement}`, date, to: sheet.link(clientStatementAddress(statement)), left };
    return { words: `Not sent yet, of ${figures.month(monthOf(date))}`, date: null, to: sheet.link(CLIENT_SINCE), left };
  });
  const { sent, notSent } = leftOf({ dues });
  return setTable<Owed, number>({
    label: 'What is owed',
    caption: `A statement counts from its last day; what is on none yet is not owed before it is sent. What was received${account.open < 0 ? ', and what was credited since,' : ''} covers the oldest statement first.`,
    set: 'account totals owed',
    keepsRows: true,
    columns: [
      {
        head: 'For',
        names: true,
        cell: ({ words, date }) => html`${words}${date !== null && sub(`since ${figures.shortDate(date)}`)}`,
      },
      { head: 'Days', set: 'num', cell: ({ date }) => date !== null && figures.whole(daysBetween(date, day)) },
      { head: 'Amount', set: 'num', cell: ({ left, to }) => linked(figures.amount(left), to), sum: (sum) => figures.amount(sum) },
    ],
    groups: rows<Owed, number>(list),
    foot: [{ words: 'Owed', sum: sent }, ...(notSent === 0 ? [] : [{ words: 'Not sent yet, and not owed', sum: notSent }])],
  });
}

/** Hours and things that the client is not charged for, each with the reason. */
export function notChargedTable(sheet: RecordSheet, lines: readonly StatementLine[]): SetTable {
  const { figures } = sheet;
  const known = sheet.index.sessions;
  const note = ({ entry }: StatementLine): string | null => {
    const session = entry.slice(0, entry.indexOf('#'));
    return known.has(session) ? sheet.toSession(session) : null;
  };
  return setTable<StatementLine>({
    label: 'Not charged',
    set: 'not-charged',
    columns: [
      { head: 'Day', set: 'date', bare: true, cell: (line) => linked(figures.shortDate(line.date), note(line)) },
      {
        head: 'What',
        set: 'what',
        bare: true,
        cell: (line) => workWords(line, line.person === null ? null : sheet.personName(line.person)),
      },
      { head: 'Hours', set: 'num', cell: ({ minutes }) => minutes !== null && figures.hours(minutes) },
      { head: 'Why', cell: ({ notCharged }) => notCharged },
    ],
    groups: rows(lines),
  });
}
