/** One page being set: its record, its figures, and how it links to everything else. */
import type { Charge, IsoDate, PartId, PositionId, SessionId, SubsystemId } from '../../journal/model.ts';
import { GENERAL } from '../../journal/model.ts';
import type { Moment } from '../../journal/record.ts';
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
} from '../addresses.ts';
import { type SiteRecord, theRecord } from '../record.ts';
import { type Figures, figuresOf } from './figures.ts';
import { indexOf, type RecordIndex } from './record-index.ts';

export interface Sheet {
  readonly address: Address;
  readonly record: SiteRecord;
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
  const link = rememberedLinks(address);
  const figures = figuresOf(record.journal.settings);
  const index = indexOf(record);
  const names = namesOf(record, index);
  const toPart = (id: PartId): string => {
    const part = record.journal.parts.get(id);
    return link(part ? partAddress(part) : PAGES.parts);
  };
  const toSubsystem = (id: SubsystemId): string => link(subsystemAddress(id));
  return {
    address,
    record,
    index,
    figures,
    link,
    ...names,
    toPage: (name) => link(PAGES[name]),
    toPart,
    toPosition: (id) => link(positionAddress(id)),
    toSession: (id) => link(sessionAddress(id)),
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

const remembered = new Map<string, Map<Address, string>>();

/**
 * The links of a page, made once for all pages of its folder: theirs are the same, but for the fragment
 * that alone is left of a link to the page itself.
 */
function rememberedLinks(address: Address): (to: Address) => string {
  const folder = address.slice(0, address.lastIndexOf('/') + 1);
  const known = remembered.get(folder) ?? new Map<Address, string>();
  remembered.set(folder, known);
  const own = linksFrom(address);
  const page = pageOf(address);
  return (to) => {
    if (to.startsWith(page) && pageOf(to) === page) return own(to);
    const href = known.get(to) ?? own(to);
    known.set(to, href);
    return href;
  };
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
