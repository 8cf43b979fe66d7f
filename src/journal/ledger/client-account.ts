/** The account with the client: what was charged, what came in, what is owed and since when. */

import { sentBy } from '../model/sent-by.ts';
import type { ClientAccount, FrozenLine, IsoDate, Minor } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { chargeFor } from './charges.ts';
import { statedAlready } from './frozen.ts';

type Books = Pick<JournalRecord, 'journal' | 'ledger'>;

/**
 * Whether a record tells of an account with a client: it names one, or money came from one, or one was sent a statement. A copy
 * without money tells of none, nor does one without hours: what is charged for them cannot be told apart from the rest.
 */
export function hasClient({ journal, ledger, copy }: Pick<JournalRecord, 'journal' | 'ledger' | 'copy'>): boolean {
  const { currency, client } = journal.settings;
  if (currency === null || copy.leavesOut.includes('hours')) return false;
  return client.name !== null || ledger.received.length > 0 || journal.statements.length > 0;
}

/** Something that is to be paid. */
interface Due {
  readonly date: IsoDate;
  /** The number of the closed statement that it is on; null while it is on none. */
  readonly statement: number | null;
  readonly amount: Minor;
}

/** What of it is not paid yet. */
export interface OpenDue extends Due {
  readonly left: Minor;
}

/**
 * The account at the end of a day. Closed statements are due on their last day, what is on none on its own.
 *
 * @param sending the lines of a statement up to that day that is being closed; it counts as closed
 */
export function clientAccount(record: Books, at: IsoDate, sending: readonly FrozenLine[] = []): ClientAccount {
  const dues = duesAt(record, at, sending);
  const received = receivedBy(record, at);
  const [stated, open] = [sum(dues.closed), sum(dues.unstated)];
  const [oldest] = uncovered(dues, received).closed;
  return { stated, open, received, owed: stated + open - received, since: oldest?.date ?? null };
}

/** What is not paid at the end of a day: what is owed on statements, then what was charged and is on none yet, each the oldest first. */
export function openDues(record: Books, at: IsoDate): OpenDue[] {
  const { closed, unstated } = uncovered(duesAt(record, at, []), receivedBy(record, at));
  return [...closed, ...unstated];
}

const receivedBy = ({ ledger }: Books, at: IsoDate): Minor => sum(ledger.received.filter(({ date }) => date <= at));

/** On statements that were closed, and on none yet. */
interface Dues<One extends Due> {
  readonly closed: readonly One[];
  readonly unstated: readonly One[];
}

/** Nobody owes what was not sent yet: money covers statements first, and what they leave of it the rest. A credit that is on none yet lowers what is owed. */
function uncovered({ closed, unstated }: Dues<Due>, received: Minor): Dues<OpenDue> {
  return {
    closed: notCovered(closed, received - Math.min(0, sum(unstated))),
    unstated: notCovered(unstated, Math.max(0, received - sum(closed))),
  };
}

function duesAt(record: Books, at: IsoDate, sending: readonly FrozenLine[]): Dues<Due> {
  const { journal, ledger } = record;
  const before = sentBy(journal, at).map(({ number: statement, to: date, charged: amount }): Due => ({ date, statement, amount }));
  const own = sending.length === 0 ? [] : [{ date: at, statement: null, amount: sum(sending.map(({ charged: amount }) => ({ amount }))) }];
  const already = new Set([...statedAlready(record, at), ...sending.map(({ entry }) => entry)]);
  const entries = ledger.entries.filter(({ id, cost, date }) => cost && date <= at && !already.has(id));
  const unstated = entries.map((entry): Due => ({ date: entry.date, statement: null, amount: chargeFor(entry, journal.settings).charged }));
  return { closed: [...before, ...own], unstated };
}

/** Money, and with it every credit, covers the oldest first. */
function notCovered(dues: readonly Due[], received: Minor): OpenDue[] {
  const oldestFirst = dues.toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  let covers = received - sum(dues.filter(({ amount }) => amount < 0));
  return oldestFirst.flatMap((due): OpenDue[] => {
    if (due.amount <= 0) return [];
    const covered = Math.min(due.amount, Math.max(0, covers));
    covers -= due.amount;
    return covered === due.amount ? [] : [{ ...due, left: due.amount - covered }];
  });
}

function sum(dues: readonly { readonly amount: Minor }[]): Minor {
  return dues.reduce((all, { amount }) => all + amount, 0);
}
