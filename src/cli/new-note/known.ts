import { stockAt } from '../../journal/ledger/stock-at.ts';
import type { IsoDate, PartId, Session } from '../../journal/model.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { bagsAt } from '../../journal/registers/bags.ts';
import { errandOf } from '../../journal/registers/errands.ts';
import { type Gate, gatesAt, type ItemRow, openItemsAt } from '../../journal/registers/open-items.ts';
import { orderedSessions, whereaboutsAt } from '../../journal/registers/stays.ts';
import { minorToDecimal } from '../../journal/values/money.ts';
import { formatQuantity } from '../../journal/values/quantity.ts';

/** Ids that the examples of a new note use: those of the last evenings where they fit, and such as hold when they are typed. */
export interface Known {
  readonly person: string;
  readonly subsystem: string;
  readonly store: string;
  /** On the vehicle. */
  readonly fitted: PartId;
  /** Off it, and its place empty; null where there is none. */
  readonly off: PartId | null;
  /** With so much of it on the shelf. */
  readonly consumable: { readonly id: string; readonly little: string; readonly left: string } | null;
  /** The next number that no bag has had. */
  readonly freeBag: number;
  readonly fullBag: number | null;
  readonly item: ItemRow | null;
  readonly next: Gate | null;
  /** The last milestone, to put things off to. */
  readonly last: string | null;
  readonly session: string | null;
  /** The last that went out and is not back; `sent` is what was asked of a firm, null of a loan. */
  readonly out: { readonly part: PartId; readonly sent: Sent | null } | null;
  /** What the client is called. */
  readonly client: string;
  /** The tax that a thing and outside work had on the last bill of such, as a note writes it. */
  readonly tax: Readonly<Record<'part' | 'outside-work', string>>;
}

/** What a firm was asked, as its bill will have it. */
export interface Sent {
  readonly firm: string;
  readonly work: string;
  /** As quoted, in digits. */
  readonly quoted: string;
}

/** What stands in for an id where the journal has none of its kind. */
export const NONE_YET = 'an-id';

const BLANK: Known = {
  person: 'me',
  subsystem: 'general',
  store: 'a shelf',
  fitted: NONE_YET,
  off: null,
  consumable: null,
  freeBag: 1,
  fullBag: null,
  item: null,
  next: null,
  last: null,
  session: null,
  out: null,
  client: 'the client',
  tax: { part: '20%', 'outside-work': '20%' },
};

/** @param date the day of the new note: what the journal has by then */
export function knownIn(record: JournalRecord | null, date: IsoDate): Known {
  if (record === null) return BLANK;
  const { journal } = record;
  const sessions = orderedSessions(record).filter((session) => session.date <= date);
  const last = sessions.at(-1) ?? null;
  const touched = sessions
    .slice(-10)
    .reverse()
    .flatMap(({ parts }) => parts.map(({ part }) => part));
  const parts = [...new Set([...touched, ...journal.parts.keys()])];
  const isAt = (at: string) => (part: PartId) =>
    whereaboutsAt(record, part, date).every(({ where }) => where.at === at && !('within' in where && where.within));
  const isEmpty = (part: PartId) =>
    parts.every((other) => whereaboutsAt(record, other, date).every(({ where }) => where.at !== 'fitted' || where.position !== part));
  const makes = (part: PartId) => journal.parts.get(part)?.makesPosition === true && journal.positions.get(part)?.inside === null;
  const bags = bagsAt(record, date);
  const gates = gatesAt(record, date);
  return {
    person: last?.hours[0]?.by ?? [...journal.people.keys()][0] ?? BLANK.person,
    subsystem: last?.hours[0]?.on.subsystem ?? [...journal.subsystems.keys()][0] ?? BLANK.subsystem,
    store: journal.stores[0] ?? BLANK.store,
    fitted: parts.find((part) => makes(part) && isAt('fitted')(part)) ?? BLANK.fitted,
    off: parts.find((part) => makes(part) && isAt('stores')(part) && isEmpty(part)) ?? null,
    consumable: consumableIn(record, date),
    freeBag: Math.max(0, ...record.history.bags.keys()) + 1,
    fullBag:
      bags.find(({ emptied, parts: held }) => emptied === null && held.length === 0)?.bag ??
      bags.find(({ emptied }) => emptied === null)?.bag ??
      null,
    item: openItemsAt(record, date).at(-1) ?? null,
    next: gates.find(({ reached }) => reached === null) ?? null,
    last: journal.milestones.at(-1)?.id ?? null,
    session: last?.id ?? null,
    out: outIn(record, date),
    client: journal.settings.client.name ?? BLANK.client,
    tax: { part: taxOf(record, sessions, 'part'), 'outside-work': taxOf(record, sessions, 'outside-work') },
  };
}

/** Of the last bill of the kind, else of any; else what the workshop charges. */
function taxOf({ journal }: JournalRecord, sessions: readonly Session[], kind: keyof Known['tax']): string {
  const lines = sessions.flatMap(({ bills }) => bills.flatMap((bill) => bill.lines)).filter(({ taxed }) => taxed.rate !== null);
  const last = lines.findLast(({ as }) => as === kind) ?? lines.at(-1);
  const rate = last?.taxed.rate ?? journal.settings.workshop.tax;
  return rate === null || rate === undefined ? BLANK.tax[kind] : `${rate.mul(100).valueOf()}%`;
}

/** What went out last of all that is out, with what was asked. */
function outIn(record: JournalRecord, date: IsoDate): Known['out'] {
  const [last] = [...record.journal.parts.keys()]
    .flatMap((part) => {
      const errand = errandOf(record, part, date);
      return errand === null ? [] : [{ part, errand }];
    })
    .sort((a, b) => b.errand.since.date.localeCompare(a.errand.since.date));
  if (last === undefined) return null;
  const { loan, firm, work, quoted } = last.errand;
  const { currencyDigits: digits } = record.journal.settings;
  const said = quoted === null ? (12.5).toFixed(digits) : minorToDecimal(quoted, digits);
  return { part: last.part, sent: loan ? null : { firm, work: work ?? 'what was done', quoted: said } };
}

/** The one used last of which there is some. */
function consumableIn(record: JournalRecord, date: IsoDate): Known['consumable'] {
  const stocked = stockAt(record, date).filter(({ left }) => left.amount.compare(0) > 0);
  const used = orderedSessions(record).flatMap(({ used: uses }) => uses.map(({ consumable }) => consumable));
  const found = stocked.toSorted((a, b) => used.lastIndexOf(b.consumable.id) - used.lastIndexOf(a.consumable.id))[0];
  if (!found) return null;
  const { id, unit } = found.consumable;
  const left = found.left.amount;
  return { id, little: formatQuantity(left.compare(1) > 0 ? left.div(left) : left, unit, 6), left: formatQuantity(left, unit, 6) };
}
