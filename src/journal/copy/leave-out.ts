/**
 * What each kind of matter is, and how a journal is without it. A copy is a smaller journal: what is taken out here no
 * page, figure, index or file made from it can know.
 */

import { perHourOf } from '../ledger/labour.ts';
import { numberedFirms } from '../model/which-firm.ts';
import {
  type Bill,
  type Destination,
  type FrozenStatement,
  type HandedOver,
  HEAD_OF_PEOPLE,
  type HeadLine,
  type Journal,
  type LeaveOut,
  type PartEntry,
  type Person,
  type PersonId,
  type Session,
  SOMEBODY,
} from '../model.ts';
import { keepingsOf } from '../replay/keepers.ts';
import { withoutFormerPrivate } from './former-private.ts';

/** A journal without one kind of matter. */
export const WITHOUT: Readonly<Record<LeaveOut, (journal: Journal) => Journal>> = {
  private: withoutPrivate,
  'former-private': (journal) => withoutFormerPrivate(journal, withoutPrivate),
  marks: withoutMarks,
  papers: withoutPapers,
  film: (journal) => withSessions(journal, () => ({ film: [], clipsBeside: [] })),
  people: withoutPeople,
  stores: withoutStores,
  hours: withoutHours,
  money: withoutMoney,
};

/** The same journal where there is nothing private in it. */
function withoutPrivate(journal: Journal): Journal {
  const { sessions, parts } = journal;
  if (sessions.every((one) => one.private === null) && [...parts.values()].every((one) => one.private === null)) return journal;
  return {
    ...journal,
    sessions: sessions.map(withoutOwnPrivate),
    parts: new Map([...parts].map(([id, part]) => [id, withoutOwnPrivate(part)])),
  };
}

const withoutOwnPrivate = <Thing extends { readonly private: string | null }>(thing: Thing): Thing =>
  thing.private === null ? thing : { ...thing, private: null };

function withSessions(journal: Journal, change: (session: Session) => Partial<Session>): Journal {
  return { ...journal, sessions: journal.sessions.map((session) => ({ ...session, ...change(session) })) };
}

function withParts(journal: Journal, change: () => Partial<Journal['parts'] extends ReadonlyMap<string, infer P> ? P : never>): Journal {
  return { ...journal, parts: new Map([...journal.parts].map(([id, part]) => [id, { ...part, ...change() }])) };
}

/** Numbers and stampings, by which a thing can be told from its like: on the vehicle, in the catalogue, as they were seen. */
function withoutMarks(journal: Journal): Journal {
  const { settings } = journal;
  const bare = withParts(
    withSessions(journal, ({ parts }) => ({ parts: parts.map((entry) => ({ ...entry, marks: null })) })),
    () => ({ marks: null }),
  );
  return { ...bare, settings: { ...settings, vehicle: { ...settings.vehicle, marks: [] } } };
}

function withoutPapers(journal: Journal): Journal {
  return withSessions(journal, ({ bills, attributed, received, valued }) => ({
    papers: [],
    bills: bills.map((bill) => ({ ...bill, paper: null })),
    attributed: attributed.map((one) => ({ ...one, paper: null })),
    received: received.map((one) => ({ ...one, paper: null })),
    valued: valued.map((one) => ({ ...one, paper: null })),
  }));
}

/** Of somebody whose hours cost nothing, or say themselves what they cost. */
const NO_RATE: Person['rates'] = [{ from: null, perHour: 0 }];

const A_FIRM = 'a firm';
const CLIENT = 'the client';

/**
 * Everybody is one and the same somebody, so that no figure tells them apart; what an hour cost stands with the hour.
 * Firms, sellers and buyers are a firm; which bill is of which quote is known all the same. What people are called in prose is theirs who wrote it.
 */
function withoutPeople(journal: Journal): Journal {
  const one = journal.people.values().next().value;
  const keeper = numbered(journal);
  const people: Journal['people'] =
    one === undefined ? new Map() : new Map([[SOMEBODY, { id: SOMEBODY, name: 'The workshop', rates: NO_RATE }]]);
  const of = ({ settings }: Journal) => ({
    ...settings,
    keeper: keeper(settings.keeper),
    client: { name: null, address: null, reference: null, terms: null },
    workshop: { ...settings.workshop, name: null, address: null, taxNumber: null },
  });
  const known = new Set(journal.stores);
  const firm = (to: Destination | null, away: boolean): Destination | null =>
    away && to !== null && to.name !== null && !known.has(to.name) ? { bag: null, name: A_FIRM } : to;
  const bare = withSessions(journal, (session) => ({
    hours: session.hours.map((entry) => ({
      ...entry,
      by: SOMEBODY,
      perHour: perHourOf(entry, session.date, journal.people.get(entry.by)),
    })),
    parts: session.parts.map((entry) => withoutFirms(entry, firm)),
    bills: session.bills.map((bill) => ({ ...bill, from: bill.from === null ? null : A_FIRM })),
    sold: session.sold.map((sale) => ({ ...sale, to: null })),
    received: session.received.map((entry) => ({ ...entry, from: CLIENT })),
    valued: session.valued.map((entry) => ({ ...entry, by: null })),
    attributed: session.attributed.map((entry) => ({ ...entry, by: null })),
    opens: session.opens.map((entry) => ({ ...entry, from: null })),
    handedOver: session.handedOver.map((entry): HandedOver => ({ ...entry, to: keeper(entry.to) })),
  }));
  const unnamedFirms = numberedFirms(journal.sessions);
  return { ...bare, people, settings: of(journal), statements: journal.statements.map(withoutNames), unnamedFirms };
}

const unnamed = (head: readonly HeadLine[] | null): readonly HeadLine[] | null =>
  head?.filter(({ name }) => !HEAD_OF_PEOPLE.has(name)) ?? null;

/** A statement that was sent, without whom it was from and to, who worked and who bought. */
function withoutNames(statement: FrozenStatement): FrozenStatement {
  const { sentWith } = statement;
  const unsold = (what: string): string => what.replace(/, to .*$/su, '');
  return {
    ...statement,
    lines: statement.lines.map((line) => ({
      ...line,
      person: line.person === null ? null : SOMEBODY,
      what: line.kind === 'sale' ? unsold(line.what) : line.what,
    })),
    sentWith: sentWith && {
      ...sentWith,
      head: unnamed(sentWith.head),
      received: sentWith.received.map((one) => ({ ...one, from: CLIENT })),
    },
  };
}

/** Keepers by number, in the order in which they had the vehicle: that it passed on is told, and not to whom. */
function numbered(journal: Journal): <Who extends PersonId | null>(keeper: Who) => Who {
  const known = [...new Set(keepingsOf(journal).flatMap(({ keeper }) => keeper ?? []))];
  return <Who extends PersonId | null>(keeper: Who) => (keeper === null ? keeper : (`keeper-${known.indexOf(keeper) + 1}` as Who));
}

/** Where something is sent out to, comes back from, or was had from, is a firm or a person. */
function withoutFirms(entry: PartEntry, firm: (to: Destination | null, away: boolean) => Destination | null): PartEntry {
  const out = entry.did.includes('sent-out') || entry.did.includes('gone');
  const back = entry.did.includes('returned') || entry.did.includes('acquired');
  return { ...entry, to: firm(entry.to, out), from: firm(entry.from, back) };
}

/** Stands for every store: a note that names none would be understood otherwise, as of a bag that it fills. */
const IN_STORES: Destination = { bag: null, name: null };

/** Where things lie: everything in stores is in stores. */
function withoutStores(journal: Journal): Journal {
  const stores = new Set(journal.stores);
  const bare = (to: Destination | null): Destination | null => (to !== null && to.name !== null && stores.has(to.name) ? IN_STORES : to);
  const kept = withParts(
    withSessions(journal, ({ parts }) => ({ parts: parts.map((entry) => ({ ...entry, to: bare(entry.to), from: bare(entry.from) })) })),
    () => ({ store: null }),
  );
  return { ...kept, stores: [] };
}

/** Time spent, and what is reckoned from it. */
function withoutHours(journal: Journal): Journal {
  const subsystems = new Map([...journal.subsystems].map(([id, one]) => [id, { ...one, budgetMinutes: null }]));
  // What was charged for them is on every statement, and in what is owed.
  return {
    ...withSessions(journal, ({ opens }) => ({ hours: [], opens: opens.map((entry) => ({ ...entry, hours: null })) })),
    subsystems,
    statements: [],
  };
}

/** What anything cost, was paid, is priced or worth; the papers that say so; what was bought stays, without its price. */
function withoutMoney(journal: Journal): Journal {
  const subsystems = new Map([...journal.subsystems].map(([id, one]) => [id, { ...one, budgetMoney: null }]));
  const people = new Map([...journal.people].map(([id, person]) => [id, { ...person, rates: NO_RATE }]));
  const consumables = new Map(
    [...journal.consumables].map(([id, one]) => [id, { ...one, opening: one.opening && { ...one.opening, value: 0 } }]),
  );
  const bare = withSessions(journal, (session) => ({
    hours: session.hours.map((entry) => ({ ...entry, perHour: null, unpaid: null })),
    bills: session.bills.map(withoutPrices),
    sold: [],
    received: [],
    valued: [],
    papers: session.papers.filter(({ kind }) => kind !== 'receipt'),
    parts: session.parts.map((entry) => ({ ...entry, quoted: null })),
    opens: session.opens.map((entry) => ({ ...entry, price: null })),
    counted: session.counted.map((entry) => ({ ...entry, value: null })),
    handedOver: session.handedOver.map((entry) => ({ ...entry, price: null })),
  }));
  const nobody = { name: null, address: null };
  const settings: Journal['settings'] = {
    ...journal.settings,
    // A journal without a currency is one without money: no page of it has a place for any.
    currency: null,
    markUp: new Map(),
    deductible: [],
    shows: [],
    workshop: { ...nobody, taxNumber: null, tax: null },
    client: { ...nobody, reference: null, terms: null },
  };
  return { ...bare, subsystems, people, consumables, settings, statements: [] };
}

function withoutPrices(bill: Bill): Bill {
  const lines = bill.lines.map((line) => ({
    ...line,
    net: 0,
    tax: 0,
    gross: 0,
    foreign: null,
    parts: line.parts.map((part) => ({ ...part, net: 0, tax: 0, gross: 0 })),
  }));
  return { ...bill, lines, discount: 0, carriage: 0, rounding: [], gross: 0, paper: null, way: null };
}
