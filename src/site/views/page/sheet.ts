/**
 * One page being set: its figures, and how it links to everything else. A page that is kept from build to build knows the record
 * by what it asks (`ask`, and the names and links here); one that is made every time has the whole of it.
 */

import type { Charge, IsoDate, PartId, PositionId, SessionId, Settings, SubsystemId } from '../../../journal/model.ts';
import { GENERAL } from '../../../journal/model.ts';
import type { Moment } from '../../../journal/record.ts';
import { keptIn, once } from '../../../journal/values/once.ts';
import {
  type Address,
  bagAddress,
  consumableAddress,
  itemAddress,
  linksFrom,
  PAGES,
  type PageName,
  pageOf,
  partAddress,
  positionAddress,
  sessionAddress,
  subsystemAddress,
} from '../../addresses.ts';
import { DAY_MARK } from '../../day-mark.ts';
import { type Ask, askedFrom, type Shared, sharedBy } from '../../kept/asking.ts';
import { type AnyQuestion, lookup, type Question } from '../../kept/question.ts';
import { type SiteRecord, theRecord } from '../../record.ts';
import { type Figures, figuresOf } from './figures.ts';
import { indexOf, type RecordIndex } from './record-index.ts';

/** What pages and their components are given. */
export interface Sheet {
  readonly address: Address;
  readonly settings: Settings;
  readonly copy: SiteRecord['copy'];
  readonly figures: Figures;
  /** The record's day in words, or what stands for it until the page is written: for what is on every page. */
  readonly dayInFrame: string;
  /** The page is served while the notes are written, and is not of a site that is built. */
  readonly served: boolean;
  /** The record's day. A page that asks for it is another one every evening. */
  readonly day: IsoDate;
  /** What the page shows; the answer is noted with the page. */
  readonly ask: Ask;
  /** What is made of a thing once for all pages of a folder that show it. */
  shared<Made>(known: Shared<Made>, thing: object, make: () => Made): Made;
  /** The relative link from this page to an address. */
  link(to: Address): string;
  toPage(name: PageName): string;
  toPart(id: PartId): string;
  toPosition(id: PositionId): string;
  toSession(id: SessionId): string;
  toSubsystem(id: SubsystemId): string;
  toBag(bag: number): string;
  toItem(id: string): string;
  toConsumable(id: string): string;
  partName(id: PartId): string;
  positionName(id: PositionId): string;
  subsystemName(id: SubsystemId): string;
  personName(id: string): string;
  milestoneName(id: string): string;
  consumableName(id: string): string;
  /** The day of a moment: linked to its session by the caller. */
  dayOf(moment: Moment): string;
  /** What a line is laid to: a part by its name and link, else a subsystem. */
  charge(on: Charge): { readonly name: string; readonly href: string };
  /** The short name of a session: its title. */
  sessionTitle(id: SessionId): string;
  date(date: IsoDate): string;
}

/** With the record: for view functions, and for pages that are made in every build. */
export interface RecordSheet extends Sheet {
  readonly record: SiteRecord;
  readonly index: RecordIndex;
}

/** Starts a page that knows the record by what it asks alone, so that it can be kept. */
export function pageSheet(record: SiteRecord, address: Address): Sheet {
  const whole = sheetOf(record, address);
  const { asking } = record;
  if (asking === undefined) return whole;
  const telling = asking.begin(address);
  const ask = askedFrom(whole, asking, telling);
  const { record: _record, index: _index, day: _day, ...plain } = whole;
  const names = namesAsked(ask);
  const toPart = (id: PartId): string => {
    ask(PART_PLACE, id);
    return whole.toPart(id);
  };
  return {
    ...plain,
    ...names,
    ask,
    shared: (known, thing, make) => sharedBy(known, thing, make, telling),
    get day() {
      return ask(DAY);
    },
    toPart,
    charge: chargeBy(names, toPart, plain.toSubsystem),
  };
}

/** Starts a page that is made in every build. */
export async function sheetAt(address: Address): Promise<RecordSheet> {
  return sheetOf(await theRecord(), address);
}

export function sheetOf(record: SiteRecord, address: Address): RecordSheet {
  const { link, of } = rememberedLinks(record, address);
  const figures = figuresOf(record.journal.settings);
  const index = indexOf(record);
  const known = { record, index, figures };
  const ask: Ask = (question, ...words) => question.answer(sheet, ...words);
  const names = namesKnown(known);
  const toPart = of('part', (id) => {
    const part = record.journal.parts.get(id);
    return part ? partAddress(part) : PAGES.parts;
  });
  const toSubsystem = (id: SubsystemId): string => link(subsystemAddress(id));
  const sheet: RecordSheet = {
    address,
    record,
    settings: record.journal.settings,
    served: record.asking === undefined,
    dayInFrame: record.asking === undefined ? figures.date(record.day) : DAY_MARK,
    day: record.day,
    copy: record.copy,
    index,
    figures,
    ask,
    shared: (known, thing, make) => keptIn(known, thing, () => ({ made: make(), asked: [] })).made,
    link,
    ...names,
    toPage: (name) => link(PAGES[name]),
    toPart,
    toPosition: of('position', positionAddress),
    toSession: of('session', sessionAddress),
    toSubsystem,
    toBag: (bag) => link(bagAddress(bag)),
    toItem: (id) => link(itemAddress(id)),
    toConsumable: (id) => link(consumableAddress(id)),
    date: figures.date,
    dayOf: ({ date, session }) => (session === null ? `as found, ${figures.date(date)}` : figures.date(date)),
    charge: chargeBy(names, toPart, toSubsystem),
  };
  return sheet;
}

function chargeBy({ partName, subsystemName }: Names, toPart: Sheet['toPart'], toSubsystem: Sheet['toSubsystem']) {
  return ({ part, subsystem }: Charge) =>
    part === null ? { name: subsystemName(subsystem), href: toSubsystem(subsystem) } : { name: partName(part), href: toPart(part) };
}

/** A link that pages of one folder share, and the page it leads to. */
interface Remembered {
  readonly page: Address;
  readonly address: Address;
  readonly href: string;
}

/** By the folder of the page and what is linked. */
const remembered = once((_: SiteRecord) => new Map<string, Map<string, Map<string, Remembered>>>());

interface Links {
  link(to: Address): string;
  /** Links by a name that a record has one address for: `of('session', sessionAddress)`. */
  of(kind: string, addressOf: (id: string) => Address): (id: string) => string;
}

/**
 * The links of a page, made once for all pages of its folder: theirs are the same, but for the fragment
 * that alone is left of a link to the page itself.
 */
function rememberedLinks(record: SiteRecord, address: Address): Links {
  const folder = keptIn(remembered(record), address.slice(0, address.lastIndexOf('/') + 1), () => new Map());
  const own = linksFrom(address);
  const here = pageOf(address);
  const of: Links['of'] = (kind, addressOf) => {
    const known = keptIn(folder, kind, () => new Map());
    return (id) => {
      const link = known.get(id);
      if (link) return link.page === here ? own(link.address) : link.href;
      const to = addressOf(id);
      const made = { page: pageOf(to), address: to, href: own(to) };
      // A page's own link to itself is no link for the others of its folder.
      if (made.page !== here) known.set(id, made);
      return made.href;
    };
  };
  return { link: of('address', (to) => to), of };
}

const DAY = lookup('day', ({ record }) => record.day);
const PART_PLACE = lookup('part place', ({ record }, id: PartId) => record.journal.parts.get(id)?.position ?? null);

/** Names by id; of what is not there, the id. */
const NAMES = {
  partName: lookup('part', ({ record: { journal } }, id: PartId) => journal.parts.get(id)?.name ?? id),
  positionName: lookup('position', ({ record: { journal } }, id: PositionId) => journal.positions.get(id)?.name ?? id),
  subsystemName: lookup(
    'subsystem',
    ({ record: { journal } }, id: SubsystemId) => journal.subsystems.get(id)?.name ?? (id === GENERAL ? 'General' : id),
  ),
  personName: lookup('person', ({ record: { journal } }, id: string) => journal.people.get(id)?.name ?? id),
  milestoneName: lookup('milestone', ({ record: { journal } }, id: string) => journal.milestones.find((one) => one.id === id)?.name ?? id),
  consumableName: lookup('consumable', ({ record: { journal } }, id: string) => journal.consumables.get(id)?.name ?? id),
  sessionTitle: lookup('session', ({ index }, id: SessionId) => index.sessions.get(id)?.title ?? id),
};

type Names = Record<keyof typeof NAMES, (id: string) => string>;

function namesKnown(known: Pick<RecordSheet, 'record' | 'index' | 'figures'>): Names {
  return namesBy((question, id) => question.answer(known as RecordSheet, id));
}

function namesAsked(ask: Ask): Names {
  return namesBy((question, id) => ask(question, id));
}

function namesBy(answer: (question: Question<[string], string>, id: string) => string): Names {
  const { partName, positionName, subsystemName, personName, milestoneName, consumableName, sessionTitle } = NAMES;
  return {
    partName: (id) => answer(partName, id),
    positionName: (id) => answer(positionName, id),
    subsystemName: (id) => answer(subsystemName, id),
    personName: (id) => answer(personName, id),
    milestoneName: (id) => answer(milestoneName, id),
    consumableName: (id) => answer(consumableName, id),
    sessionTitle: (id) => answer(sessionTitle, id),
  };
}

/** What every page may ask without saying so. */
export const SHEET_QUESTIONS: readonly AnyQuestion[] = [DAY, PART_PLACE, ...Object.values(NAMES)];
