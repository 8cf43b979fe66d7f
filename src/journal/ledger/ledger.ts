/** The ledger: every line of every session that costs time or money, and the stock of consumables. */

import type { Diagnostic } from '../diagnostics/diagnostic.ts';
import { entryId } from '../model/entry-id.ts';
import { type BillLine, type Charge, type ConsumableId, GENERAL, type Journal, type Session, type StockTake } from '../model.ts';
import type { Entry, Ledger, StockAccount } from '../record.ts';
import { billEntries, entryOf, handOverEntries, saleEntry, untaxed } from './entries.ts';
import { chargeOf, perHourOf } from './labour.ts';
import { lineId, type Settled, settleRefunds } from './refunds.ts';
import { type Shelf, shelfOf } from './shelf.ts';
import type { Worth } from './worth.ts';

/** What the entries of a session are made with. */
interface Posting {
  readonly journal: Journal;
  readonly shelves: ReadonlyMap<ConsumableId, Shelf>;
  readonly bills: Settled['bills'];
  readonly diagnostics: Diagnostic[];
}

/**
 * Makes the ledger of a journal. Sessions go in their order; within one: hours, bills, sales, use, and
 * last the stock-take, which says what is there at the end of it.
 *
 * @param inDoubt consumables of which some stock could not be read
 * @returns the diagnostics A805 (shortage), A810 (no rate yet), A308 (an amount of stock that is none) and those of refunds
 */
export function ledgerOf(journal: Journal, inDoubt: ReadonlySet<ConsumableId>): { ledger: Ledger; diagnostics: Diagnostic[] } {
  const diagnostics: Diagnostic[] = [];
  const shelves = new Map<ConsumableId, Shelf>();
  for (const consumable of journal.consumables.values()) {
    shelves.set(consumable.id, shelfOf(consumable, journal.settings, !inDoubt.has(consumable.id), diagnostics));
  }
  const settled = settleRefunds(journal);
  diagnostics.push(...settled.diagnostics);
  const posting: Posting = { journal, shelves, bills: settled.bills, diagnostics };
  const entries = journal.sessions.flatMap((session) => entriesOf(session, posting));
  const bills = [...settled.bills.values()].flat();
  return { ledger: { entries, bills, stock: accounts(posting), ...clientMoney(journal) }, diagnostics };
}

function clientMoney({ sessions }: Journal): Pick<Ledger, 'received' | 'valuations'> {
  const received = sessions.flatMap(({ id, date, received: list }) =>
    list.map((one, i) => ({ ...one, id: `${id}#received-${i + 1}`, date, session: id })),
  );
  const valuations = sessions.flatMap(({ id, date, valued }) => valued.map((one) => ({ ...one, date, session: id })));
  return { received, valuations };
}

function entriesOf(session: Session, posting: Posting): Entry[] {
  return [
    ...labourEntries(session, posting),
    ...(posting.bills.get(session.id) ?? []).flatMap((bill) => [
      ...billEntries(session, bill, posting.journal),
      ...bill.lines.flatMap((line, i) => stockLine(session, line, lineId(bill, i), posting)),
    ]),
    ...session.sold.map((sale, i) => saleEntry(session, sale, i, posting.journal)),
    ...session.handedOver.flatMap((passed, i) => handOverEntries(session, passed, i, posting.journal)),
    ...useEntries(session, posting),
    ...countEntries(session, posting),
  ];
}

/** What an entry of labour is called. */
export const WORK = 'Work';

function labourEntries(session: Session, { journal, diagnostics }: Posting): Entry[] {
  return session.hours.map((worked, i) => {
    const worker = journal.people.get(worked.by);
    const charge = chargeOf(worked, session.date, worker, diagnostics);
    const perHour = perHourOf(worked, session.date, worker);
    const what = `${WORK}${between(worked.text)}${worked.unpaid === null ? '' : `; not charged: ${worked.unpaid}`}`;
    const { by: person, unpaid: notCharged, minutes, place } = worked;
    const id = entryId(session.id, 'hours', i);
    const own = { id, kind: 'labour', what, person, minutes, perHour, notCharged, paid: false, cost: true, place } as const;
    return entryOf(session, worked.on, untaxed(charge), own, journal);
  });
}

/** The clock times of a range, as a reader writes them; a bare length is said by the hours beside it already. */
const between = (time: string): string => (time.includes(':') ? `, ${time.replace(/\s*-\s*/, '\u2013')}` : '');

/** Puts a line's stock on the shelf or gives it back; a difference on giving back costs the job. */
function stockLine(session: Session, line: BillLine, entry: string, { journal, shelves }: Posting): Entry[] {
  const shelf = line.consumable === null ? undefined : shelves.get(line.consumable);
  if (!shelf || line.amount === null) return [];
  const occasion = { session, entry, place: line.place };
  if (line.refund === null) {
    shelf.bought(line.amount, { gross: line.gross, tax: line.tax }, occasion);
    return [];
  }
  const refund = { gross: -line.gross, tax: -line.tax };
  const difference = shelf.returned(line.amount, refund, line.refund, line.purchase, occasion);
  if (difference.gross === 0 && difference.tax === 0) return [];
  const charge = line.charges[0]?.charge ?? { part: null, subsystem: GENERAL };
  const own = stockEntry(`${entry}-difference`, `${line.what}: difference on giving it back`, line);
  return [entryOf(session, charge, moneyOf(difference), own, journal)];
}

function useEntries(session: Session, { journal, shelves }: Posting): Entry[] {
  return session.used.map((use, i) => {
    const id = entryId(session.id, 'used', i);
    const cost = shelves.get(use.consumable)?.used(use.amount, { session, entry: id, place: use.place });
    const what = `${journal.consumables.get(use.consumable)?.name ?? use.consumable}, ${use.amount.text}`;
    return entryOf(session, use.on, moneyOf(cost), { ...stockEntry(id, what, use), notCharged: use.notCharged }, journal);
  });
}

/** Why a client is not charged for what a stock-take finds missing: it went, and may have gone anywhere. */
export const NOT_TOLD_OF = 'a difference found by counting, and no note says that the vehicle had it';

/**
 * What a stock-take finds missing costs the job, no one knows for what; what turns up is set against that. The client is charged only
 * where the note lays it to something of the vehicle, and what was charged so is given back where it turns up.
 */
function countEntries(session: Session, { journal, shelves }: Posting): Entry[] {
  return session.counted.flatMap((take, i) => {
    const id = entryId(session.id, 'counted', i);
    const shelf = shelves.get(take.consumable);
    const lost = shelf?.counted(take, { session, entry: id, place: take.place });
    const missing = (shelf?.movements.at(-1)?.amount.s ?? 0n) < 0n;
    if (!lost || (!missing && lost.gross === 0)) return [];
    const name = journal.consumables.get(take.consumable)?.name ?? take.consumable;
    const because = take.because.replace(/^stock-?take\b[\s,.:;]*/i, '');
    const what = `${name}, ${missing ? 'missing' : 'turned up'} at a stock-take${because === '' ? '' : `: ${because}`}`;
    const on = take.on ?? (missing ? null : laidBefore(journal, take, session));
    const own = { ...stockEntry(id, what, take), notCharged: on === null ? NOT_TOLD_OF : null };
    return [entryOf(session, on ?? { part: null, subsystem: GENERAL }, moneyOf(lost), own, journal)];
  });
}

/** What an earlier stock-take of the same was laid to, and so charged. */
function laidBefore({ sessions }: Journal, { consumable }: StockTake, { date }: Session): Charge | null {
  const earlier = sessions.filter((one) => one.date < date).flatMap(({ counted }) => counted);
  return earlier.findLast((one) => one.consumable === consumable && one.on !== null)?.on ?? null;
}

function moneyOf(worth: Worth = { gross: 0, tax: 0 }) {
  return { net: worth.gross - worth.tax, tax: worth.tax, gross: worth.gross };
}

function stockEntry(id: string, what: string, { consumable, place }: Pick<Entry, 'consumable' | 'place'>) {
  return { id, kind: 'consumable', what, standing: 'several', consumable, paid: false, cost: true, place } as const;
}

function accounts({ journal, shelves }: Posting): ReadonlyMap<ConsumableId, StockAccount> {
  const all = new Map<ConsumableId, StockAccount>();
  for (const consumable of journal.consumables.values()) {
    all.set(consumable.id, { consumable, movements: shelves.get(consumable.id)?.movements ?? [] });
  }
  return all;
}
