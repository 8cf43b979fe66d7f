/** What a client is asked for: the job cost of a time as it is charged, with the mark-up agreed for each kind and tax. */
import type Fraction from 'fraction.js';
import { ENTRY_KINDS, type EntryKind, type FrozenLine, type FrozenStatement, type IsoDate, type Minor, type PersonId } from '../model.ts';
import type { Entry, JournalRecord, ReceivedEntry } from '../record.ts';
import { chargeFor } from './charges.ts';
import { type ClientAccount, clientAccount } from './client-account.ts';
import { chargedAlready, lastClosed } from './frozen.ts';
import { rateOn } from './labour.ts';
import { type StandingRow, taxStandings } from './tax-standing.ts';

/** One entry as it is charged. */
export interface StatementLine extends FrozenLine {
  /** Why it is not charged; null where it is. */
  readonly notCharged: string | null;
  /** It is of a time that a closed statement was of, and was told only after that. */
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

/** What is charged at one rate of tax. */
export interface TaxAtRate {
  readonly rate: Fraction;
  readonly sum: StatementSum;
}

export interface Statement {
  /** Of one that was closed. */
  readonly number: number | null;
  readonly from: IsoDate;
  readonly to: IsoDate;
  /** In the order of ENTRY_KINDS; kinds without a line are left out. Sales are a credit. */
  readonly groups: readonly StatementGroup[];
  readonly notCharged: readonly StatementLine[];
  readonly hours: readonly HoursAtRate[];
  /** Empty where the workshop is not registered for tax. The highest rate first. */
  readonly taxes: readonly TaxAtRate[];
  /** What the lines cost the workshop, by how that stands to tax; empty for one that was closed. */
  readonly inside: readonly StandingRow[];
  readonly sum: StatementSum;
  /** What came in on these days. */
  readonly received: readonly ReceivedEntry[];
  /** The account with the client at the end of the last day, this statement included. */
  readonly account: ClientAccount;
}

type Books = Pick<JournalRecord, 'journal' | 'ledger'>;

/**
 * The statement from one day to another, both included. What a closed statement has charged is on it no more; what
 * was told late, of a time that one was of, is.
 */
export function statementOf(books: Books, from: IsoDate, to: IsoDate): Statement {
  const closed = lastClosed(books.journal.statements);
  const charged = chargedAlready(books);
  const isOfTime = (date: IsoDate): boolean => date <= to && (date >= from || (closed !== null && date <= closed.to));
  const entries = books.ledger.entries.filter(({ id, cost, date }) => cost && isOfTime(date) && !charged.has(id));
  const lines = entries.map((entry) => lineOf(entry, books, closed));
  return statementFrom({ number: null, from, to, inside: taxStandings(entries) }, lines, books);
}

/** A statement that was closed, as it was sent. */
export function closedStatement({ number, from, to, lines }: FrozenStatement, books: Books): Statement {
  const sent = lines.map((line): StatementLine => ({ ...line, notCharged: null, late: line.date < from }));
  return statementFrom({ number, from, to, inside: [] }, sent, books);
}

function statementFrom(
  head: Pick<Statement, 'number' | 'from' | 'to' | 'inside'>,
  lines: readonly StatementLine[],
  books: Books,
): Statement {
  const charged = lines.filter(({ notCharged }) => notCharged === null);
  const kinds = Map.groupBy(charged, ({ kind }) => kind);
  const groups = ENTRY_KINDS.flatMap((kind) => {
    const of = kinds.get(kind);
    return of ? [{ kind, lines: of, sum: sumLines(of) }] : [];
  });
  return {
    ...head,
    groups,
    notCharged: lines.filter(({ notCharged }) => notCharged !== null),
    hours: hoursAtRates(kinds.get('labour') ?? []),
    taxes: taxesAtRates(charged),
    sum: sumLines(charged),
    received: books.ledger.received.filter(({ date }) => date >= head.from && date <= head.to),
    account: clientAccount(books, head.to),
  };
}

function lineOf(entry: Entry, { journal }: Books, closed: FrozenStatement | null): StatementLine {
  const { id, date, kind, what, subsystem, person, minutes, gross: cost, notCharged } = entry;
  const worker = journal.people.get(person ?? '');
  const perHour = kind === 'labour' && worker ? rateOn(worker, date) : null;
  const said = { entry: id, date, kind, what, subsystem, person, minutes, perHour, cost, notCharged };
  return { ...said, late: closed !== null && date <= closed.to, ...chargeFor(entry, journal.settings) };
}

function sumLines(lines: readonly StatementLine[]): StatementSum {
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

function taxesAtRates(lines: readonly StatementLine[]): TaxAtRate[] {
  const groups = Map.groupBy(lines, ({ rate }) => rate?.toFraction() ?? '');
  const rows = [...groups.values()].flatMap((of) => (of[0]?.rate ? [{ rate: of[0].rate, sum: sumLines(of) }] : []));
  return rows.sort((a, b) => b.rate.compare(a.rate));
}
