/** One page being set: its record, its figures, and how it links to everything else. */

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
import { type SiteRecord, theRecord } from '../../record.ts';
import { type Figures, figuresOf } from './figures.ts';
import { indexOf, type RecordIndex } from './record-index.ts';

export interface Sheet {
  readonly address: Address;
  /** For views; a page and its components are given what they show. */
  readonly record: SiteRecord;
  readonly settings: Settings;
  /** The record's day. */
  readonly day: IsoDate;
  readonly copy: SiteRecord['copy'];
  readonly index: RecordIndex;
  readonly figures: Figures;
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

/** Starts a page. */
export async function sheetAt(address: Address): Promise<Sheet> {
  return sheetOf(await theRecord(), address);
}

export function sheetOf(record: SiteRecord, address: Address): Sheet {
  const { link, of } = rememberedLinks(record, address);
  const figures = figuresOf(record.journal.settings);
  const index = indexOf(record);
  const names = namesOf(record, index);
  const toPart = of('part', (id) => {
    const part = record.journal.parts.get(id);
    return part ? partAddress(part) : PAGES.parts;
  });
  const toSubsystem = (id: SubsystemId): string => link(subsystemAddress(id));
  return {
    address,
    record,
    settings: record.journal.settings,
    day: record.day,
    copy: record.copy,
    index,
    figures,
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
    charge: ({ part, subsystem }) =>
      part === null
        ? { name: names.subsystemName(subsystem), href: toSubsystem(subsystem) }
        : { name: names.partName(part), href: toPart(part) },
  };
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

function namesOf({ journal }: SiteRecord, index: RecordIndex) {
  const milestones = new Map(journal.milestones.map(({ id, name }) => [id, name]));
  return {
    partName: (id: PartId) => journal.parts.get(id)?.name ?? id,
    positionName: (id: PositionId) => journal.positions.get(id)?.name ?? id,
    subsystemName: (id: SubsystemId) => journal.subsystems.get(id)?.name ?? (id === GENERAL ? 'General' : id),
    personName: (id: string) => journal.people.get(id)?.name ?? id,
    milestoneName: (id: string) => milestones.get(id) ?? id,
    consumableName: (id: string) => journal.consumables.get(id)?.name ?? id,
    sessionTitle: (id: SessionId) => index.sessions.get(id)?.title ?? id,
  };
}
