/** What a client is asked for: the job cost of a time, with the mark-up agreed for each kind. */
import type Fraction from 'fraction.js';
import { ENTRY_KINDS, type EntryKind, type IsoDate, type Minor, type Person } from '../model.ts';
import type { Entry } from '../record.ts';
import { roundHalfAway } from '../values/money.ts';
import { standingKey, type TaxStanding } from '../values/tax.ts';
import { rateOn } from './labour.ts';
import { type LedgerSource, type Sum, sumBy, sumOf } from './sums.ts';

/** One entry as charged: its gross and the mark-up, which is rounded at the entry, half away from zero. */
export interface ChargedLine {
  readonly entry: Entry;
  readonly markUp: Minor;
  readonly charged: Minor;
}

/** All of one kind. */
export interface StatementGroup {
  readonly kind: EntryKind;
  readonly lines: readonly ChargedLine[];
  readonly sum: Sum;
  readonly markUp: Minor;
  readonly charged: Minor;
}

/** One person's hours at one rate; `perHour` is null for hours that are not charged. */
export interface HoursAtRate {
  readonly person: Person;
  readonly perHour: Minor | null;
  readonly sum: Sum;
}

/** What is charged by how it stands to tax: each rate, 0 % too, what is exempt, and what was bought at several. */
export interface TaxAtRate {
  readonly standing: TaxStanding;
  /** Null unless rated. */
  readonly rate: Fraction | null;
  readonly sum: Sum;
}

export interface Statement {
  readonly from: IsoDate;
  readonly to: IsoDate;
  /** In the order of ENTRY_KINDS; kinds without an entry are left out. Sales are a credit. */
  readonly groups: readonly StatementGroup[];
  readonly hours: readonly HoursAtRate[];
  readonly taxes: readonly TaxAtRate[];
  readonly cost: Sum;
  readonly markUp: Minor;
  readonly charged: Minor;
}

/**
 * The statement from one day to another, both included. Mark-up is on the gross; no tax is reckoned on it:
 * whoever must charge tax on a mark-up sets that out on an invoice, which this is not.
 */
export function statementOf({ journal, ledger }: LedgerSource, from: IsoDate, to: IsoDate): Statement {
  const entries = ledger.entries.filter((entry) => entry.cost && entry.date >= from && entry.date <= to);
  const kinds = sumBy(entries, (entry) => entry.kind);
  const groups = ENTRY_KINDS.flatMap((kind) => {
    const sum = kinds.get(kind);
    return sum ? [groupOf(kind, sum, journal.settings.markUp.get(kind) ?? null)] : [];
  });
  const total = (figure: (group: StatementGroup) => Minor): Minor => groups.reduce((all, group) => all + figure(group), 0);
  return {
    from,
    to,
    groups,
    hours: hoursAtRates(kinds.get('labour')?.entries ?? [], journal.people),
    taxes: taxesAtRates(entries),
    cost: sumOf(entries),
    markUp: total((group) => group.markUp),
    charged: total((group) => group.charged),
  };
}

function groupOf(kind: EntryKind, sum: Sum, rate: Fraction | null): StatementGroup {
  const lines = sum.entries.map((entry) => {
    const markUp = rate === null ? 0 : roundHalfAway(rate.mul(entry.gross));
    return { entry, markUp, charged: entry.gross + markUp };
  });
  const markUp = lines.reduce((all, line) => all + line.markUp, 0);
  return { kind, lines, sum, markUp, charged: sum.gross + markUp };
}

function hoursAtRates(labour: readonly Entry[], people: ReadonlyMap<string, Person>): HoursAtRate[] {
  const rateOf = (entry: Entry): Minor | null => {
    const person = people.get(entry.person ?? '');
    return entry.gross === 0 || !person ? null : rateOn(person, entry.date);
  };
  return [...sumBy(labour, (entry) => `${entry.person} ${rateOf(entry) ?? ''}`).values()].flatMap((sum) => {
    const [first] = sum.entries;
    const person = people.get(first?.person ?? '');
    return first && person ? [{ person, perHour: rateOf(first), sum }] : [];
  });
}

const STANDINGS: readonly TaxStanding[] = ['rated', 'exempt', 'several', 'unsaid'];

/** Every entry in one of the rows, the highest rate first; together they are what it cost. */
function taxesAtRates(entries: readonly Entry[]): TaxAtRate[] {
  const sums = sumBy(entries, ({ standing, taxRate: rate }) => standingKey({ standing, rate }));
  const rows = [...sums.values()].map((sum): TaxAtRate => {
    const { standing = 'unsaid', taxRate: rate = null } = sum.entries[0] ?? {};
    return { standing, rate, sum };
  });
  return rows.sort((a, b) => STANDINGS.indexOf(a.standing) - STANDINGS.indexOf(b.standing) || (b.rate?.compare(a.rate ?? 0) ?? 0));
}
