/**
 * What a note becomes: a session with everything recorded in it. Entries are as the schema has them, with what they
 * name known to exist; only what follows from them, or is read against the journal, is told here.
 */
import type Fraction from 'fraction.js';
import type { Place } from '../diagnostics/place.ts';
import type { Destination } from '../schema/fields.ts';
import type { Given, Placed } from '../schema/given.ts';
import type { EntryOf, SessionSource } from '../schema/session.ts';
import type { BoughtAs, PartId, PersonId, PositionId, SessionId, SubsystemId } from '../schema/words.ts';
import type { IsoDate } from '../values/date.ts';
import type { Minor } from '../values/decimal.ts';
import type { LinkName } from '../values/link.ts';
import type { Foreign } from '../values/money.ts';
import type { PicturePlace } from '../values/picture-place.ts';
import type { Quantity } from '../values/quantity.ts';
import type { Tax, TaxPart } from '../values/tax.ts';
import type { TaxWay } from '../values/tax-ways.ts';

/** What a line of a note is laid to: a part, or a subsystem as a whole. */
export interface Charge {
  readonly part: PartId | null;
  readonly subsystem: SubsystemId;
}

export interface WorkedTime extends Placed<Omit<EntryOf<'hours'>, 'by' | 'on' | 'time'>> {
  readonly by: PersonId;
  readonly on: Charge;
  /** Elapsed minutes, clock changes of the journal's time zone counted. */
  readonly minutes: number;
  /** The same minutes by the day of the calendar, earliest first, which says whether a day holds them. The ledger has them all on the day of their note. */
  readonly days: readonly { readonly date: IsoDate; readonly minutes: number }[];
  /** For a clock range: instants in minutes since 1970-01-01T00:00Z. */
  readonly span: { readonly start: number; readonly end: number } | null;
  /** As written. */
  readonly text: string;
  /** What an hour of it is charged at where `by` does not say: in a copy that names nobody. */
  readonly perHour: Minor | null;
}

/** One entry under `parts`: a part touched. */
export interface PartEntry extends Placed<Omit<EntryOf<'parts'>, 'which' | 'from' | 'quoted'>> {
  /** Where it was taken from; for what is acquired, who had it. */
  readonly from: Destination | null;
  /** The parts that it was made from. */
  readonly madeFrom: readonly PartId[];
  readonly quoted: Minor | null;
  /** Which of a numbered lot, smallest first; null where the entry does not say. */
  readonly which: readonly number[] | null;
}

export interface Decision extends Placed<Omit<EntryOf<'decisions'>, 'count' | 'which'>> {
  /** Unique in the journal: session id and its place in the list, `2031-03-12-front-brakes#1`. */
  readonly id: string;
  readonly session: SessionId;
  readonly date: IsoDate;
  readonly position: PositionId;
  /** How many of the lot it speaks of; the position's whole count when not said. */
  readonly count: number;
  /** Which of a numbered lot, smallest first; null where it does not say. */
  readonly which: readonly number[] | null;
}

/** What somebody came to believe of a part's origin, and why. */
export interface Attribution extends Placed<EntryOf<'attributed'>> {
  readonly session: SessionId;
  readonly date: IsoDate;
}

export type Method = Placed<EntryOf<'methods'>>;

export interface Measurement extends Placed<Omit<EntryOf<'measured'>, 'limits'>> {
  readonly low: Quantity | null;
  readonly high: Quantity | null;
  readonly limitsText: string | null;
  /** Null without limits. */
  readonly within: boolean | null;
}

/** One thing bought, costed in the journal's currency. gross = net + tax, always. */
export interface BillLine
  extends Placed<Pick<EntryOf<'bought'>, 'consumable' | 'amount' | 'refund' | 'refundOf' | 'notCharged' | 'deductible'>> {
  readonly what: string;
  readonly as: BoughtAs;
  /** Shares add up to 1; one entry unless `split`. */
  readonly charges: readonly { readonly charge: Charge; readonly weight: Fraction }[];
  readonly net: Minor;
  readonly tax: Minor;
  readonly gross: Minor;
  readonly taxed: Tax;
  /** The same money by how it stands to tax: carriage and discount may stand otherwise than the line. Never empty. */
  readonly parts: readonly TaxPart[];
  /** Of a refund: the id of the line that it gives back, as far as the journal tells of it. */
  readonly purchase: string | null;
  /** The gross in the currency of the bill. */
  readonly foreign: Foreign | null;
}

/** Which way a bill was reckoned up. */
export interface BillWay {
  readonly tax: TaxWay;
  /** Carriage and discount were shared over the lines before tax, and so bear the tax of the lines. */
  readonly sharedFirst: boolean;
}

/** What a bill comes to beyond its lines; the foreign amount is its gross in the currency of the bill. */
export interface Rounding extends TaxPart {
  readonly foreign: Foreign | null;
}

/** A bill: a single `bought` line, or an entry under `bills`. Discount and carriage are already shared out into its lines. */
export interface Bill extends Placed<Pick<EntryOf<'bills'>, 'from' | 'paper'>> {
  /** Session id and a running number. */
  readonly id: string;
  readonly session: SessionId;
  readonly date: IsoDate;
  readonly lines: readonly BillLine[];
  /** What was shared over the lines, gross, for the page of the bill. */
  readonly discount: Minor;
  readonly carriage: Minor;
  /** The rounding on the paper, which stands to no tax; and what tax comes to beyond that of each line, a rate each. */
  readonly rounding: readonly Rounding[];
  /** Lines and rounding. */
  readonly gross: Minor;
  /** How its seller reckoned, going by the total on the paper; null where there is no total or no tax to tell by. */
  readonly way: BillWay | null;
}

export interface Sale extends Placed<Pick<EntryOf<'sold'>, 'count' | 'to'>> {
  readonly what: string;
  readonly charge: Charge;
  readonly net: Minor;
  readonly tax: Minor;
  readonly gross: Minor;
  readonly taxed: Tax;
  readonly foreign: Foreign | null;
}

export interface Use extends Placed<Omit<EntryOf<'used'>, 'on'>> {
  readonly on: Charge;
}

/** Money from the client; negative where it was paid back. */
export interface Received extends Placed<Pick<EntryOf<'received'>, 'from' | 'for'>> {
  readonly amount: Minor;
  readonly foreign: Foreign | null;
  /** The path of the paper inside the journal. */
  readonly paper: string | null;
}

/** What the vehicle, or a part of it, is held to be worth. */
export interface Valuation extends Placed<Pick<EntryOf<'valued'>, 'basis' | 'by'>> {
  /** Null: the vehicle. */
  readonly of: PartId | null;
  readonly value: Minor;
  /** The path of the paper inside the journal. */
  readonly paper: string | null;
}

/** The vehicle passes to another keeper. */
export interface HandedOver extends Placed<Omit<EntryOf<'handedOver'>, 'price'>> {
  /** Of the vehicle itself, where it was sold. */
  readonly price: Minor | null;
}

export interface StockTake extends Placed<Omit<EntryOf<'counted'>, 'value' | 'on'>> {
  /** What the difference is laid to; null where the note does not say that the vehicle had it. */
  readonly on: Charge | null;
  /** What was found beyond the books is worth; null where the note does not say. */
  readonly value: Minor | null;
}

export type BagFilling = Placed<EntryOf<'bags'>>;

export interface ItemOpening extends Placed<Omit<EntryOf<'opens'>, 'on' | 'price'>> {
  /** It names a milestone, and no such one is known: that is told already. */
  readonly beforeUnknown?: boolean;
  readonly on: Charge | null;
  readonly price: Minor | null;
}

/** A place that a picture points at. */
export interface PicturePoint {
  readonly at: PicturePlace;
  readonly shows: PartId | null;
  readonly note: string | null;
}

/** A picture by its path inside the journal. */
export interface Picture extends Given<Omit<EntryOf<'pictures'>, 'points'>> {
  readonly points: readonly PicturePoint[];
  /** Those of `shows` that its entry under `pictures` names; the others are linked in its paragraph. */
  readonly named: readonly PartId[];
  /** It stands in the prose; otherwise it is shown after it. */
  readonly inProse: boolean;
  /** Nobody mentions it: it lies in the session's folder. */
  readonly unmentioned: boolean;
  readonly place: Place | null;
}

export interface FilmClip extends Placed<Omit<EntryOf<'film'>, 'shows'>> {
  /** Path inside the journal when it is a file there, else null. */
  readonly file: string | null;
  readonly marks: readonly { readonly seconds: number; readonly text: string; readonly parts: readonly PartId[] }[];
}

export interface Paper extends Placed<Omit<EntryOf<'papers'>, 'paper'>> {
  /** Path inside the journal. */
  readonly file: string;
}

/** A link or picture found in the prose of a note. */
export interface ProseLink extends LinkName {
  /** Running number of the paragraph it stands in. */
  readonly paragraph: number;
  readonly place: Place;
}

/** What the lists of a note become. */
interface Recorded {
  readonly hours: readonly WorkedTime[];
  readonly parts: readonly PartEntry[];
  readonly decisions: readonly Decision[];
  readonly attributed: readonly Attribution[];
  readonly methods: readonly Method[];
  readonly measured: readonly Measurement[];
  readonly bills: readonly Bill[];
  readonly sold: readonly Sale[];
  readonly received: readonly Received[];
  readonly valued: readonly Valuation[];
  readonly used: readonly Use[];
  readonly counted: readonly StockTake[];
  readonly bags: readonly BagFilling[];
  readonly emptied: readonly { readonly bag: number; readonly place: Place }[];
  readonly opens: readonly ItemOpening[];
  readonly closes: readonly Placed<EntryOf<'closes'>>[];
  readonly defers: readonly Placed<EntryOf<'defers'>>[];
  readonly reached: readonly Placed<EntryOf<'reached'>>[];
  readonly handedOver: readonly HandedOver[];
  readonly pictures: readonly Picture[];
  readonly film: readonly FilmClip[];
  /** Clips in its folder that it does not name, by their paths inside the journal. They are not published. */
  readonly clipsBeside: readonly string[];
  readonly papers: readonly Paper[];
}

export interface Session extends Recorded, Given<Omit<SessionSource, keyof Recorded | 'bought'>> {
  readonly id: SessionId;
  /** Path of the note inside the journal. */
  readonly file: string;
  readonly datePlace: Place | null;
  readonly correctsPlace: Place | null;
  readonly links: readonly ProseLink[];
  /** The Markdown under the front matter. */
  readonly body: string;
  /** The line of the file on which that begins. */
  readonly bodyLine: number;
}
