/**
 * The compiled journal: what every later stage and every page reads.
 *
 * The tree is plain data, ordered, with every reference resolved to an id that exists. Whatever
 * could not be understood has been reported as a diagnostic and left out.
 */

import type Fraction from 'fraction.js';
import type { IdentityTable } from './registers/identity-tables/table.ts';

/** A calendar date, `YYYY-MM-DD`. Dates are compared as text; no time zone can move them. */
export type IsoDate = string;
/** Minor units of the journal's currency (pence, cents), always a safe integer. */
export type Minor = number;
export type PartId = string;
/** The id of the part that makes the position. */
export type PositionId = string;
export type SessionId = string;
export type SubsystemId = string;
export type PersonId = string;
export type ConsumableId = string;
export type MilestoneId = string;
export type ItemId = string;

/** What cannot be laid to one subsystem counts under this one. */
export const GENERAL: SubsystemId = 'general';

/** Where something is written: a file of the journal and a range in it, lines and columns from 1. */
export interface Place {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly endLine: number;
  readonly endColumn: number;
}

export const ORIGINS = ['original', 'earlier-replacement', 'donor', 'new-old-stock', 'period', 'reproduction', 'new', 'made'] as const;
export type Origin = (typeof ORIGINS)[number];

export const ACTIONS = [
  'removed',
  'fitted',
  'stored',
  'sent-out',
  'returned',
  'acquired',
  'made',
  'gone',
  'inspected',
  'measured',
  'cleaned',
  'conserved',
  'repaired',
  'machined',
  'refinished',
  'adjusted',
  'lubricated',
  'tested',
  'marked',
] as const;
export type ActionWord = (typeof ACTIONS)[number];

export const VERDICTS = ['keep', 'conserve', 'repair', 'refinish', 'replace', 'omit', 'defer'] as const;
export type Verdict = (typeof VERDICTS)[number];

export const HAZARDS = [
  'asbestos',
  'lead-paint',
  'isocyanates',
  'fuel-vapour',
  'hot-work',
  'stored-energy',
  'pressure',
  'lifting',
  'battery',
  'brake-fluid',
  'coolant',
] as const;
export type Hazard = (typeof HAZARDS)[number];

/** A major component of the vehicle, in a word of the points tables. */
export type Component = string;

export const ITEM_KINDS = ['task', 'question', 'buy', 'temporary'] as const;
export type ItemKind = (typeof ITEM_KINDS)[number];

export const GONE_HOW = ['scrapped', 'sold', 'given', 'lost'] as const;
export type GoneHow = (typeof GONE_HOW)[number];

export const RESULTS = ['good', 'fair', 'poor'] as const;
export type MethodResult = (typeof RESULTS)[number];

export const BOUGHT_AS = ['part', 'consumable', 'outside-work', 'tool', 'carriage', 'fee'] as const;
export type BoughtAs = (typeof BOUGHT_AS)[number];

export const ENTRY_KINDS = ['labour', ...BOUGHT_AS, 'sale'] as const;
export type EntryKind = (typeof ENTRY_KINDS)[number];

/** Condition class 0 to 3: no, minor, moderate, major symptoms (EN 16096, by analogy). */
export type Condition = 0 | 1 | 2 | 3;

export interface Rate {
  /** In force from this day; the first rate of a person is in force from the start. */
  readonly from: IsoDate | null;
  readonly perHour: Minor;
}

export interface Person {
  readonly id: PersonId;
  readonly name: string;
  /** Oldest first, never empty. */
  readonly rates: readonly Rate[];
}

export interface Subsystem {
  readonly id: SubsystemId;
  readonly name: string;
  /** Hours of the budget in minutes. */
  readonly budgetMinutes: number | null;
  readonly budgetMoney: Minor | null;
}

export interface Milestone {
  readonly id: MilestoneId;
  readonly name: string;
  /** Its place in the declared order, from 0. */
  readonly order: number;
}

export interface Vehicle {
  readonly make: string | null;
  readonly model: string | null;
  readonly year: string | null;
  readonly marks: readonly { readonly what: string; readonly mark: string }[];
}

export const COPIES = ['workshop', 'record', 'public'] as const;
export type CopyName = (typeof COPIES)[number];
export const LEAVE_OUT = ['marks', 'money', 'people', 'private'] as const;
export type LeaveOut = (typeof LEAVE_OUT)[number];

export interface Settings {
  readonly title: string;
  readonly about: string | null;
  readonly vehicle: Vehicle;
  /** The as-found state is of this day. */
  readonly arrived: IsoDate;
  /** ISO 4217 code, upper case. */
  readonly currency: string;
  /** Digits after the decimal mark: ISO 4217 minor unit. */
  readonly currencyDigits: number;
  readonly timeZone: string;
  readonly locale: string;
  /** Where the site will live, ending in `/`; absent when unknown. */
  readonly address: string | null;
  readonly stock: 'fifo' | 'average';
  /** Mark-up on the client statement by entry kind, exact fractions (0.1 is ten per cent). */
  readonly markUp: ReadonlyMap<EntryKind, Fraction>;
  readonly copies: ReadonlyMap<CopyName, readonly LeaveOut[]>;
  readonly keepPictureFacts: readonly ('time' | 'camera')[];
}

export type Dimension = 'length' | 'area' | 'volume' | 'mass' | 'torque' | 'pressure' | 'angle' | 'electric' | 'count' | 'other';

/** A quantity as written and in the exact base unit of its dimension. */
export interface Quantity {
  /** As the note says it: `9.043 in`. */
  readonly text: string;
  readonly value: Fraction;
  readonly unit: string;
  readonly dimension: Dimension;
  /** In the coherent base unit of the dimension (m, m2, L, kg, N.m, Pa …), exact. */
  readonly base: Fraction;
}

export interface Consumable {
  readonly id: ConsumableId;
  readonly name: string;
  /** The unit its stock is shown in. */
  readonly unit: string;
  readonly hazards: readonly string[];
  readonly opening: { readonly amount: Quantity; readonly value: Minor } | null;
  readonly place: Place;
}

/** Where (part of) a part is. The counts over all whereabouts of a part add up to its count. */
export type Whereabouts =
  | { readonly at: 'fitted'; readonly position: PositionId }
  | { readonly at: 'stores' /** null: in stores, unplaced */; readonly store: string | null }
  | { readonly at: 'bag'; readonly bag: number }
  | { readonly at: 'out'; readonly firm: string }
  | { readonly at: 'gone'; readonly how: GoneHow }
  | { readonly at: 'missing' }
  | { readonly at: 'not-yet' };

export interface Part {
  readonly id: PartId;
  readonly name: string;
  readonly subsystem: SubsystemId;
  /** Null for a part that is missing as found and never turned up. */
  readonly origin: Origin | null;
  readonly evidence: string | null;
  readonly count: number;
  /** The position it belongs to: its own, or the one it is a candidate for. */
  readonly position: PositionId;
  readonly makesPosition: boolean;
  readonly found: 'fitted' | 'loose' | 'missing';
  /** Where it lay at the start, or where it was put when acquired. */
  readonly store: string | null;
  /** From this day it is here; null when it was here from the start or a session brings it. */
  readonly acquired: IsoDate | null;
  readonly marks: string | null;
  readonly finish: string | null;
  readonly condition: Condition | null;
  readonly hazards: readonly Hazard[];
  readonly components: readonly Component[];
  /** For the originality share; 0 leaves the position out. */
  readonly weight: Fraction;
  readonly private: string | null;
  readonly note: string | null;
  readonly place: Place;
}

/** A place on the vehicle; it takes as many as its count. */
export interface Position {
  readonly id: PositionId;
  readonly name: string;
  readonly subsystem: SubsystemId;
  readonly count: number;
  readonly weight: Fraction;
  readonly components: readonly Component[];
  /** Parts that belong here, the one that made the position first, then in catalogue order. */
  readonly parts: readonly PartId[];
}

/** What a line of a note is laid to: a part, or a subsystem as a whole. */
export interface Charge {
  readonly part: PartId | null;
  readonly subsystem: SubsystemId;
}

export interface WorkedTime {
  readonly by: PersonId;
  readonly on: Charge;
  /** Elapsed minutes, clock changes of the journal's time zone counted. */
  readonly minutes: number;
  /** For a clock range: instants in minutes since 1970-01-01T00:00Z. */
  readonly span: { readonly start: number; readonly end: number } | null;
  /** As written. */
  readonly text: string;
  /** Why it is not charged; null when it is. */
  readonly unpaid: string | null;
  readonly place: Place;
}

/** One entry under `parts`: a part touched. */
export interface PartEntry {
  readonly part: PartId;
  readonly did: readonly ActionWord[];
  /** Null: all that are in the state the action needs. */
  readonly count: number | null;
  readonly to: Destination | null;
  readonly at: PositionId | null;
  readonly from: Destination | null;
  readonly how: GoneHow | null;
  readonly condition: Condition | null;
  readonly marks: string | null;
  readonly finish: string | null;
  readonly note: string | null;
  readonly place: Place;
}

/** `to` and `from` as written: a bag by its number, else the name of a store, firm or position. */
export type Destination = { readonly bag: number; readonly name: null } | { readonly bag: null; readonly name: string };

export interface Decision {
  /** Unique in the journal: session id and its place in the list, `2031-03-12-front-brakes#1`. */
  readonly id: string;
  readonly session: SessionId;
  readonly date: IsoDate;
  readonly part: PartId;
  readonly position: PositionId;
  readonly verdict: Verdict;
  readonly with: PartId | null;
  /** How many of the lot it speaks of; the position's whole count when not said. */
  readonly count: number;
  readonly because: string | null;
  readonly place: Place;
}

export interface Method {
  readonly on: readonly PartId[];
  readonly how: string;
  readonly with: readonly ConsumableId[];
  readonly material: string | null;
  readonly result: MethodResult | null;
  readonly note: string | null;
  readonly place: Place;
}

export interface Measurement {
  readonly part: PartId;
  readonly what: string;
  readonly as: 'found' | 'left' | null;
  readonly value: Quantity;
  readonly low: Quantity | null;
  readonly high: Quantity | null;
  readonly limitsText: string | null;
  /** Null without limits. */
  readonly within: boolean | null;
  readonly note: string | null;
  readonly place: Place;
}

/** How tax stands to the cost as written. */
export interface Tax {
  /** Exact fraction: 20 % is 1/5. Null when exempt or not said. */
  readonly rate: Fraction | null;
  readonly on: 'inside' | 'top' | 'exempt' | 'unsaid';
}

/** An amount in another currency, as on the bill. */
export interface Foreign {
  readonly currency: string;
  /** Minor units of that currency. */
  readonly amount: number;
  /** One unit of it in the journal's currency, as written. */
  readonly rate: string;
}

/** One thing bought, costed in the journal's currency. gross = net + tax, always. */
export interface BillLine {
  readonly what: string;
  readonly as: BoughtAs;
  readonly consumable: ConsumableId | null;
  readonly amount: Quantity | null;
  /** Shares add up to 1; one entry unless `split`. */
  readonly charges: readonly { readonly charge: Charge; readonly weight: Fraction }[];
  readonly net: Minor;
  readonly tax: Minor;
  readonly gross: Minor;
  readonly taxed: Tax;
  readonly foreign: Foreign | null;
  /** Why money came back; null for a purchase. */
  readonly refund: string | null;
  readonly place: Place;
}

/** A bill: a single `bought` line, or an entry under `bills`. Discount and carriage are already shared out into its lines. */
export interface Bill {
  /** Session id and a running number. */
  readonly id: string;
  readonly session: SessionId;
  readonly date: IsoDate;
  readonly from: string | null;
  /** The path of the paper inside the journal. */
  readonly paper: string | null;
  readonly lines: readonly BillLine[];
  /** What was shared over the lines, gross, for the page of the bill. */
  readonly discount: Minor;
  readonly carriage: Minor;
  readonly gross: Minor;
  readonly place: Place;
}

export interface Sale {
  readonly what: string;
  readonly charge: Charge;
  readonly count: number | null;
  readonly to: string | null;
  readonly net: Minor;
  readonly tax: Minor;
  readonly gross: Minor;
  readonly place: Place;
}

export interface Use {
  readonly consumable: ConsumableId;
  readonly amount: Quantity;
  readonly on: Charge;
  readonly place: Place;
}

export interface StockTake {
  readonly consumable: ConsumableId;
  readonly amount: Quantity;
  readonly because: string;
  readonly place: Place;
}

export interface BagFilling {
  readonly bag: number;
  readonly holds: readonly string[];
  readonly off: PartId | null;
  readonly goesBack: string | null;
  readonly picture: string | null;
  readonly place: Place;
}

export interface ItemOpening {
  readonly id: ItemId;
  readonly kind: ItemKind;
  readonly what: string;
  readonly before: MilestoneId | null;
  readonly on: Charge | null;
  readonly price: Minor | null;
  readonly place: Place;
}

export interface Picture {
  /** Path inside the journal. */
  readonly file: string;
  readonly shows: readonly PartId[];
  readonly view: string | null;
  readonly caption: string | null;
  readonly alt: string | null;
  /** It stands in the prose; otherwise it is shown after it. */
  readonly inProse: boolean;
  /** Nobody mentions it: it lies in the session's folder. */
  readonly unmentioned: boolean;
  readonly place: Place | null;
}

export interface FilmClip {
  readonly clip: string;
  /** Path inside the journal when it is a file there, else null. */
  readonly file: string | null;
  readonly title: string | null;
  readonly marks: readonly { readonly seconds: number; readonly text: string; readonly parts: readonly PartId[] }[];
  readonly place: Place;
}

export interface Paper {
  /** Path inside the journal. */
  readonly file: string;
  readonly kind: string;
  readonly what: string | null;
  readonly date: IsoDate | null;
  readonly shows: readonly PartId[];
  readonly place: Place;
}

/** A link or picture found in the prose of a note. */
export interface ProseLink {
  readonly scheme: 'part' | 'bag' | 'item' | 'session' | 'consumable';
  readonly id: string;
  /** Running number of the paragraph it stands in. */
  readonly paragraph: number;
  readonly place: Place;
}

export interface Session {
  readonly id: SessionId;
  /** Path of the note inside the journal. */
  readonly file: string;
  readonly date: IsoDate;
  readonly datePlace: Place | null;
  readonly title: string;
  readonly hours: readonly WorkedTime[];
  readonly parts: readonly PartEntry[];
  readonly decisions: readonly Decision[];
  readonly methods: readonly Method[];
  readonly measured: readonly Measurement[];
  readonly bills: readonly Bill[];
  readonly sold: readonly Sale[];
  readonly used: readonly Use[];
  readonly counted: readonly StockTake[];
  readonly bags: readonly BagFilling[];
  readonly emptied: readonly { readonly bag: number; readonly place: Place }[];
  readonly opens: readonly ItemOpening[];
  readonly closes: readonly { readonly id: ItemId; readonly how: string | null; readonly place: Place }[];
  readonly defers: readonly { readonly id: ItemId; readonly to: MilestoneId; readonly because: string; readonly place: Place }[];
  readonly reached: readonly {
    readonly milestone: MilestoneId;
    readonly withOpen: readonly ItemId[];
    readonly because: string | null;
    readonly place: Place;
  }[];
  readonly pictures: readonly Picture[];
  readonly film: readonly FilmClip[];
  readonly papers: readonly Paper[];
  readonly cautions: readonly Hazard[];
  readonly private: string | null;
  readonly corrects: SessionId | null;
  readonly correctsPlace: Place | null;
  readonly links: readonly ProseLink[];
  /** The Markdown under the front matter. */
  readonly body: string;
}

export interface Journal {
  readonly settings: Settings;
  readonly people: ReadonlyMap<PersonId, Person>;
  readonly subsystems: ReadonlyMap<SubsystemId, Subsystem>;
  /** In declared order. */
  readonly milestones: readonly Milestone[];
  readonly stores: readonly string[];
  readonly consumables: ReadonlyMap<ConsumableId, Consumable>;
  readonly parts: ReadonlyMap<PartId, Part>;
  readonly positions: ReadonlyMap<PositionId, Position>;
  /** Published points tables of a vehicle's identity, the journal's own first. */
  readonly identityTables: readonly IdentityTable[];
  /** By date, then by file name. */
  readonly sessions: readonly Session[];
}
