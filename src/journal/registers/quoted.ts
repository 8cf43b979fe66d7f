/** Work that a firm quoted for, and what its bills for that work came to. */
import { type Sum, sumOf } from '../ledger/sums.ts';
import { whichFirm } from '../model/which-firm.ts';
import {
  type Charge,
  GENERAL,
  type IsoDate,
  type ItemId,
  type ItemOpening,
  type Journal,
  type Minor,
  type PartEntry,
  type PartId,
  type SessionId,
} from '../model.ts';
import type { Entry, JournalRecord } from '../record.ts';
import { once } from '../values/once.ts';
import { type At, dateOf } from './source.ts';

/** What was quoted, by whom, for what. */
interface Quote {
  readonly on: Charge;
  /** Null where nobody said who. */
  readonly firm: string | null;
  /** The same text for the same firm, in a copy that names none too; null where nobody said who. */
  readonly which: string | null;
  /** What is to be done, in the words of the note. */
  readonly work: string | null;
  readonly quoted: Minor;
  readonly session: SessionId;
  readonly date: IsoDate;
  /** The waiting item that tells of it; else a part was sent out for it. */
  readonly item: ItemId | null;
}

export interface QuotedWork extends Quote {
  /** With tax and carriage, as they were laid to it; nothing where no bill is of it. */
  readonly billed: Sum;
  /** What of that is carriage. */
  readonly carriage: BilledCarriage;
  /** Still out, or still waited for. */
  readonly open: boolean;
  /** Earlier words of the same firm on the same work, which this one took the place of. */
  readonly before: readonly Minor[];
}

/** Carriage on bills of quoted work, with tax. A bill shares it over all its lines. */
export interface BilledCarriage {
  /** Of bills of this work alone. */
  readonly own: Minor;
  /** Of bills that have other things too: no more is known than that some of it is in their lines. */
  readonly shared: Minor;
}

type Books = Pick<JournalRecord, 'journal' | 'ledger' | 'history' | 'day'>;

/**
 * Quotes by the end of a day, in the order of the notes, each with its bills. A line of a bill is of a quote when it is outside work
 * laid to the same part (or to the same subsystem, where the quote names no part), on a bill of the same firm, of the day of the quote
 * or later, and before the next quote of that firm for that part. A later quote before any bill takes the place of the earlier one,
 * unless it is of something beside what the firm still had: another item that is waited for, or more of a lot that was sent out.
 * Nothing else is matched: a bill that names no seller is of no quote.
 */
export function quotedWork(record: Books, at: At): QuotedWork[] {
  const date = dateOf(record, at);
  const quotes = [...sentOut(record, date), ...awaited(record, date)].sort((a, b) => compareDates(a.date, b.date));
  const groups = Map.groupBy(quotes, keyOf);
  const works = [...groups].flatMap(([key, of]) => worksOf(of, key === null ? [] : billedOf(record, key, date), record, date));
  return works.sort((a, b) => compareDates(a.date, b.date));
}

const compareDates = (a: IsoDate, b: IsoDate): number => (a === b ? 0 : a < b ? -1 : 1);

/** Work of one firm on one thing; null where nobody said of which firm. */
const keyOf = ({ on, which }: Pick<Quote, 'on' | 'which'>): string | null =>
  which === null ? null : `${on.part ?? `of ${on.subsystem}`}\n${which}`;

function worksOf(quotes: readonly Quote[], bills: readonly Entry[], record: Books, date: IsoDate): QuotedWork[] {
  const works: QuotedWork[] = [];
  quotes.forEach((quote, i) => {
    const next = quotes[i + 1];
    const until = quote.which === null || next === undefined ? null : next.date;
    const billed = sumOf(bills.filter((entry) => entry.date >= quote.date && (until === null || entry.date < until)));
    const last = works.at(-1);
    const replaces = last !== undefined && quote.which !== null && last.billed.entries.length === 0 && !isBeside(quote, last, record);
    const before = replaces ? [...last.before, last.quoted] : [];
    const open = isOpen(quote, record, date) || (replaces && last.open);
    const carriage = carriageOf(record, billed.entries);
    const work = { ...quote, work: quote.work ?? (replaces ? last.work : null), billed, carriage, before, open };
    if (replaces) works.pop();
    works.push(work);
  });
  return works;
}

function carriageOf({ ledger }: Books, entries: readonly Entry[]): BilledCarriage {
  const here = Map.groupBy(entries, ({ bill }) => bill);
  const sum = { own: 0, shared: 0 };
  for (const { id, carriage, lines } of ledger.bills) {
    const of = here.get(id);
    if (of === undefined || carriage === 0) continue;
    const all = lines.reduce((total, { gross }) => total + gross, 0);
    sum[sumOf(of).gross === all ? 'own' : 'shared'] += carriage;
  }
  return sum;
}

/** Every quote with a part that went out for it. */
function sentOut({ history, journal }: Books, date: IsoDate): Quote[] {
  const subsystemOf = (part: PartId): string => journal.parts.get(part)?.subsystem ?? GENERAL;
  return history.deeds.flatMap(({ part, did, session, date: on, entry }) =>
    did !== 'sent-out' || on > date || entry.quoted === null
      ? []
      : [
          {
            on: { part, subsystem: subsystemOf(part) },
            ...sentTo(entry, journal),
            work: entry.work,
            quoted: entry.quoted,
            session,
            date: on,
            item: null,
          },
        ],
  );
}

/** Every quote that a waiting item tells; without a name it waits for the firm that its part is out with. */
function awaited(record: Books, date: IsoDate): Quote[] {
  return [...record.history.items.values()].flatMap(({ id, opening, opened }) => {
    const { kind, price, on, what } = opening;
    if (kind !== 'waiting' || price === null || on === null || opened.date > date) return [];
    const named = awaitedFrom(opening, record.journal);
    const from = named.which !== null || on.part === null ? named : firmWith(record, on.part, opened.date);
    return [{ on, ...from, work: what, quoted: price, session: opened.session, date: opened.date, item: id }];
  });
}

/** A firm, by its name as far as that is told. */
type Firm = Pick<Quote, 'firm' | 'which'>;

function sentTo({ to, place }: PartEntry, journal: Journal): Firm {
  const firm = to?.name ?? null;
  return { firm, which: whichFirm(journal, { place, firm }) };
}

function awaitedFrom({ from: firm, place }: ItemOpening, journal: Journal): Firm {
  return { firm, which: whichFirm(journal, { place, firm }) };
}

function outAt({ history }: Books, part: PartId, date: IsoDate) {
  return (history.stays.get(part) ?? []).filter(
    ({ where, from, to }) => where.at === 'out' && from.date <= date && (to === null || to.date > date),
  );
}

/** Whom a part is out with: what came back in between left the rest where it was sent. */
function firmWith(record: Books, part: PartId, date: IsoDate): Firm {
  const [stay] = outAt(record, part, date);
  const sent = record.history.deeds.findLast(
    (deed) => deed.part === part && deed.did === 'sent-out' && stay !== undefined && deed.date <= stay.from.date,
  );
  return sent === undefined ? { firm: null, which: null } : sentTo(sent.entry, record.journal);
}

function isOpen({ item, on, session }: Quote, record: Books, date: IsoDate): boolean {
  if (item === null) return outAt(record, on.part ?? '', date).some(({ from }) => from.session === session);
  const closed = record.history.items.get(item)?.closed ?? null;
  return closed === null || closed.date > date;
}

/** Whether it is of something else than the earlier one, which the firm still had: two items, or two that were sent out. */
function isBeside(quote: Quote, earlier: Quote, record: Books): boolean {
  return (quote.item === null) === (earlier.item === null) && isOpen(earlier, record, quote.date);
}

/** Lines of bills for outside work, by the firm and what they are laid to. */
const outsideWork = once(
  ({ ledger, journal }: Books): ReadonlyMap<string | null, readonly Entry[]> => {
    const sellers = new Map(ledger.bills.map(({ id, place, from: firm }) => [id, whichFirm(journal, { place, firm })]));
    const work = ledger.entries.filter(({ kind, bill }) => kind === 'outside-work' && bill !== null);
    return Map.groupBy(work, (entry) => keyOf({ on: entry, which: sellers.get(entry.bill ?? '') ?? null }));
  },
  ({ ledger }) => ledger,
);

function billedOf(record: Books, key: string, date: IsoDate): readonly Entry[] {
  return (outsideWork(record).get(key) ?? []).filter((entry) => entry.date <= date);
}
