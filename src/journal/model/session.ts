/** What a note becomes: a session with everything recorded in it. */
import type Fraction from 'fraction.js';
import type { Place } from '../diagnostics/place.ts';
import type {
  ActionWord,
  BoughtAs,
  Condition,
  ConsumableId,
  GoneHow,
  Hazard,
  ItemId,
  ItemKind,
  MethodResult,
  MilestoneId,
  PartId,
  PersonId,
  PositionId,
  SessionId,
  SubsystemId,
  Verdict,
} from '../schema/words.ts';
import type { IsoDate } from '../values/date.ts';
import type { Minor } from '../values/decimal.ts';
import type { LinkName } from '../values/link.ts';
import type { Foreign } from '../values/money.ts';
import type { Quantity } from '../values/quantity.ts';
import type { Tax } from '../values/tax.ts';

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
  /** The same minutes by the day they were worked on, earliest first: what comes after midnight is of the next day. */
  readonly days: readonly { readonly date: IsoDate; readonly minutes: number }[];
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
  /** It names a milestone, and no such one is known: that is told already. */
  readonly beforeUnknown?: boolean;
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
export interface ProseLink extends LinkName {
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
