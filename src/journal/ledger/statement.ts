/** What a client is asked for: the job cost of a time as it is charged, with the mark-up agreed for each kind and tax. */
import type Fraction from 'fraction.js';
import { sentBy } from '../model/sent-by.ts';
import {
  ENTRY_KINDS,
  type EntryKind,
  type FrozenLine,
  type FrozenReceipt,
  type FrozenStatement,
  type IsoDate,
  type Journal,
  type Minor,
  type PersonId,
  type SentWith,
} from '../model.ts';
import type { Entry, JournalRecord } from '../record.ts';
import { addDays } from '../values/date.ts';
import { once } from '../values/once.ts';
import { compareText } from '../values/text-order.ts';
import { chargeFor } from './charges.ts';
import { clientAccount } from './client-account.ts';
import { lastClosed, statedAlready, unlistedReceipts } from './frozen.ts';
import { paidAtTax } from './tax-standing.ts';

/** One entry as it is charged. */
export interface StatementLine extends FrozenLine {
  /** It is of a time that a closed statement was of, and was told only after that. */
  readonly late: boolean;
}

/** Money that came in; late as a line is. */
export interface StatementReceipt extends FrozenReceipt {
  readonly late: boolean;
}

/** The figures of some lines together. */
export interface StatementSum extends Pick<FrozenLine, 'cost' | 'net' | 'markUp' | 'tax' | 'charged'> {
  readonly minutes: number;
}

/** All of one kind. */
export interface StatementGroup {
  readonly kind: EntryKind;
  readonly lines: readonly StatementLine[];
  readonly sum: StatementSum;
}

/** One person's hours at one rate. */
export interface HoursAtRate {
  readonly person: PersonId | null;
  readonly perHour: Minor | null;
  readonly sum: StatementSum;
}

/** What is charged at one rate of tax, or was sold at it: a sale is a credit, and lowers nothing that is charged. */
export interface TaxAtRate {
  readonly rate: Fraction;
  readonly sold: boolean;
  readonly sum: StatementSum;
}

/**
 * `inside` is what the lines that are charged cost the workshop, `received` what came in and was on no statement before, `account` that with the client at the
 * end of the last day, this statement included.
 */
export interface Statement extends Omit<SentWith, 'received'> {
  /** Of one that was closed. */
  readonly number: number | null;
  readonly from: IsoDate;
  readonly to: IsoDate;
  /** In the order of ENTRY_KINDS; kinds without a line are left out. Sales are a credit. */
  readonly groups: readonly StatementGroup[];
  readonly notCharged: readonly StatementLine[];
  readonly received: readonly StatementReceipt[];
  readonly hours: readonly HoursAtRate[];
  /** Empty where the workshop is not registered for tax. What is charged, then what was sold, the highest rate first. */
  readonly taxes: readonly TaxAtRate[];
  readonly sum: StatementSum;
}

type Books = Pick<JournalRecord, 'journal' | 'ledger'>;

/**
 * The statement from one day to another, both included. What a closed statement has charged, or shown as not charged, is
 * on it no more; what was told late, of a time that one was of, is: work, materials, what came back of them, and money that came in.
 */
export function statementOf(books: Books, from: IsoDate, to: IsoDate): Statement {
  const closed = lastClosed(sentBy(books.journal, to));
  const stated = statedAlready(books, to);
  const isOfTime = (date: IsoDate): boolean => date <= to && (date >= from || isLate(date, closed));
  const entries = books.ledger.entries.filter(({ id, cost, date }) => cost && isOfTime(date) && !stated.has(id));
  const lines = entries.map((entry) => lineOf(entry, books, closed));
  const charged = entries.filter(({ notCharged }) => notCharged === null);
  const received = unlistedReceipts(books, to).filter(({ date }) => isOfTime(date));
  return statementFrom({ number: null, from, to }, lines, closed, { ...sentWith(to, books), received, inside: paidAtTax(charged) });
}

const earlier = (a: IsoDate, b: IsoDate): IsoDate => (compareText(a, b) < 0 ? a : b);

/** All that is on no statement yet by the end of a day: what was told late, and what came before the vehicle did, too. */
export function openStatement(books: Books, at: IsoDate): Statement {
  const { settings } = books.journal;
  const closed = lastClosed(sentBy(books.journal, at));
  const first = books.ledger.entries.find(({ cost }) => cost)?.date ?? settings.arrived;
  const from = closed === null ? earlier(first, settings.arrived) : addDays(closed.to, 1);
  return statementOf(books, earlier(from, at), at);
}

/** An open statement as it is sent: closed, under its number. */
export function asSent(statement: Statement, number: number, books: Books): Statement {
  return { ...statement, number, account: clientAccount(books, statement.to, linesOf(statement)) };
}

/** Every line of a statement, those that are not charged last. */
export function linesOf({ groups, notCharged }: Statement): StatementLine[] {
  return [...groups.flatMap(({ lines }) => lines), ...notCharged];
}

/** A statement that was closed, as it was sent. */
export function closedStatement(frozen: FrozenStatement, books: Books): Statement {
  const { number, from, to, lines } = frozen;
  const before = lastClosed(books.journal.statements.filter((each) => each.number < number));
  const sent = lines.map((line): StatementLine => ({ ...line, late: isLate(line.date, before) }));
  return statementFrom({ number, from, to }, sent, before, frozen.sentWith ?? receivedWithin(from, to, books));
}

/** What stands on a statement besides its lines, as the notes have it now. */
function sentWith(to: IsoDate, books: Books): SentWith {
  const { shows, workshop } = books.journal.settings;
  return { head: null, registered: workshop.tax !== null, shows, inside: [], received: [], account: clientAccount(books, to) };
}

/** The same of one whose file does not keep it. */
function receivedWithin(from: IsoDate, to: IsoDate, books: Books): SentWith {
  return { ...sentWith(to, books), received: books.ledger.received.filter(({ date }) => date >= from && date <= to) };
}

function isLate(date: IsoDate, closed: FrozenStatement | null): boolean {
  return closed !== null && date <= closed.to;
}

function statementFrom(
  head: Pick<Statement, 'number' | 'from' | 'to'>,
  lines: readonly StatementLine[],
  before: FrozenStatement | null,
  besides: SentWith,
): Statement {
  const charged = lines.filter(({ notCharged }) => notCharged === null);
  const kinds = Map.groupBy(charged, ({ kind }) => kind);
  const groups = ENTRY_KINDS.flatMap((kind) => {
    const of = kinds.get(kind);
    return of ? [{ kind, lines: of, sum: sumLines(of) }] : [];
  });
  return {
    ...head,
    ...besides,
    received: besides.received.map((one) => ({ ...one, late: isLate(one.date, before) })),
    groups,
    notCharged: lines.filter(({ notCharged }) => notCharged !== null),
    hours: hoursAtRates(kinds.get('labour') ?? []),
    taxes: taxesAtRates(charged),
    sum: sumLines(charged),
  };
}

function lineOf(entry: Entry, { journal }: Books, closed: FrozenStatement | null): StatementLine {
  const { id, session, date, kind, what, subsystem, person, minutes, perHour, gross: cost, notCharged } = entry;
  const title = kind === 'labour' ? (titlesOf(journal).get(session) ?? null) : null;
  const said = { entry: id, date, kind, what, title, subsystem, person, minutes, perHour, cost, notCharged };
  return { ...said, late: isLate(date, closed), ...chargeFor(entry, journal.settings) };
}

const titlesOf = once(({ sessions }: Pick<Journal, 'sessions'>) => new Map(sessions.map(({ id, title }) => [id, title])));

export function sumLines(lines: readonly StatementLine[]): StatementSum {
  const sum = (figure: (line: StatementLine) => number): number => lines.reduce((all, line) => all + figure(line), 0);
  return {
    minutes: sum(({ minutes }) => minutes ?? 0),
    cost: sum(({ cost }) => cost),
    net: sum(({ net }) => net),
    markUp: sum(({ markUp }) => markUp),
    tax: sum(({ tax }) => tax),
    charged: sum(({ charged }) => charged),
  };
}

function hoursAtRates(labour: readonly StatementLine[]): HoursAtRate[] {
  return [...Map.groupBy(labour, ({ person, perHour }) => `${person} ${perHour}`).values()].map((lines) => {
    const { person = null, perHour = null } = lines[0] ?? {};
    return { person, perHour, sum: sumLines(lines) };
  });
}

/** Lines by their rate, what is charged and then what was sold; those without a rate are in none. */
export function taxesAtRates(lines: readonly StatementLine[]): TaxAtRate[] {
  return [false, true].flatMap((sold) => {
    const groups = Map.groupBy(
      lines.filter(({ kind }) => (kind === 'sale') === sold),
      ({ rate }) => rate?.toFraction() ?? '',
    );
    const rows = [...groups.values()].flatMap((of) => (of[0]?.rate ? [{ rate: of[0].rate, sold, sum: sumLines(of) }] : []));
    return rows.sort((a, b) => b.rate.compare(a.rate));
  });
}
