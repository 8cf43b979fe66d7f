/** The account with the client: what was charged, what came in, what is owed and since when. */
import type { ClientAccount, FrozenLine, IsoDate, Minor } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { chargeFor } from './charges.ts';
import { statedAlready } from './frozen.ts';

interface Due {
  readonly date: IsoDate;
  readonly amount: Minor;
}

/**
 * The account at the end of a day. Closed statements are due on their last day, what is on none on its own.
 *
 * @param sending the lines of a statement up to that day that is being closed; it counts as closed
 */
export function clientAccount(
  record: Pick<JournalRecord, 'journal' | 'ledger'>,
  at: IsoDate,
  sending: readonly FrozenLine[] = [],
): ClientAccount {
  const { journal, ledger } = record;
  const before = journal.statements.filter(({ to }) => to <= at).map(({ to: date, charged: amount }): Due => ({ date, amount }));
  const own = sending.map(({ charged: amount }): Due => ({ date: at, amount }));
  const closed = [...before, ...(own.length === 0 ? [] : [{ date: at, amount: sum(own) }])];
  const already = new Set([...statedAlready(record), ...sending.map(({ entry }) => entry)]);
  const entries = ledger.entries.filter(({ id, cost, date }) => cost && date <= at && !already.has(id));
  const unstated = entries.map((entry): Due => ({ date: entry.date, amount: chargeFor(entry, journal.settings).charged }));
  const received = sum(ledger.received.filter(({ date }) => date <= at));
  const [stated, open] = [sum(closed), sum(unstated)];
  const owed = stated + open - received;
  return { stated, open, received, owed, since: owed > 0 ? oldestDue([...closed, ...unstated], received) : null };
}

function oldestDue(dues: readonly Due[], received: Minor): IsoDate | null {
  const oldestFirst = dues.toSorted((a, b) => (a.date < b.date ? -1 : a.date > b.date ? 1 : 0));
  // Credits lower what is due from the start.
  let left = received - sum(dues.filter(({ amount }) => amount < 0));
  for (const { date, amount } of oldestFirst) {
    left -= Math.max(0, amount);
    if (left < 0) return date;
  }
  return null;
}

function sum(dues: readonly { readonly amount: Minor }[]): Minor {
  return dues.reduce((all, { amount }) => all + amount, 0);
}
