/**
 * The record: the journal with what follows from it by replaying and adding up. Pages and exports
 * read this and nothing else.
 */
import type Fraction from 'fraction.js';
import type {
  ActionWord,
  BagFilling,
  Bill,
  Condition,
  Consumable,
  ConsumableId,
  CopyName,
  Decision,
  EntryKind,
  Foreign,
  GoneHow,
  IsoDate,
  ItemId,
  ItemOpening,
  Journal,
  LeaveOut,
  MilestoneId,
  Minor,
  PartEntry,
  PartId,
  PersonId,
  Place,
  PositionId,
  Received,
  SessionId,
  SubsystemId,
  Valuation,
  Whereabouts,
} from './model.ts';
import type { TaxStanding } from './values/tax.ts';

/** When something became so. `session` is null for the as-found state and for catalogue dates. */
export interface Moment {
  readonly date: IsoDate;
  readonly session: SessionId | null;
}

/** `count` of a part at one place, from one moment to the next. Stays of a part partition its count at every moment. */
export interface Stay {
  readonly part: PartId;
  readonly count: number;
  /** Which of a numbered lot; null where they cannot be told apart. */
  readonly which: readonly number[] | null;
  readonly where: Whereabouts;
  readonly from: Moment;
  /** Null: still so. */
  readonly to: Moment | null;
}

/** One action that took effect, with where the part was when it was done. */
export interface Deed {
  readonly part: PartId;
  readonly did: ActionWord;
  readonly count: number;
  /** Which of a numbered lot; null where they cannot be told apart. */
  readonly which: readonly number[] | null;
  readonly date: IsoDate;
  readonly session: SessionId;
  /** Where it was before, and after (the same for work done in place). */
  readonly from: Whereabouts;
  readonly to: Whereabouts;
  /** The position concerned: where it was or is fitted, else the part's own. */
  readonly position: PositionId;
  readonly entry: PartEntry;
}

/** What was done under one number of a bag, oldest first. */
export interface BagHistory {
  readonly bag: number;
  /** Never empty. */
  readonly fillings: readonly FilledBag[];
}

/** One filling of a bag. */
export interface FilledBag {
  /** `session` is null for a bag that was full at the start. */
  readonly filled: { readonly session: SessionId | null; readonly date: IsoDate; readonly filling: BagFilling };
  readonly emptied: { readonly session: SessionId; readonly date: IsoDate } | null;
}

export interface ItemHistory {
  readonly id: ItemId;
  readonly opening: ItemOpening;
  readonly opened: { readonly session: SessionId; readonly date: IsoDate };
  /** Deferrals in order; `from` is the milestone it was due before until then. */
  readonly deferred: readonly {
    readonly session: SessionId;
    readonly date: IsoDate;
    readonly from: MilestoneId | null;
    readonly to: MilestoneId;
    readonly because: string;
  }[];
  readonly closed: { readonly session: SessionId; readonly date: IsoDate; readonly how: string | null } | null;
}

export interface MilestoneReached {
  readonly milestone: MilestoneId;
  readonly session: SessionId;
  readonly date: IsoDate;
  readonly withOpen: readonly ItemId[];
  readonly because: string | null;
}

/** What the replay of every session in order leaves behind. */
export interface History {
  /** By part, in order of `from`. */
  readonly stays: ReadonlyMap<PartId, readonly Stay[]>;
  /** The same stays where the part was fitted, by position, in order of `from`. */
  readonly occupants: ReadonlyMap<PositionId, readonly Stay[]>;
  readonly deeds: readonly Deed[];
  /** All decisions on a position, oldest first. */
  readonly decisions: ReadonlyMap<PositionId, readonly Decision[]>;
  /** Decisions on parts that had never stood anywhere, oldest first: of a spare that is not wanted, nothing is said of the place. */
  readonly aside: readonly Decision[];
  readonly bags: ReadonlyMap<number, BagHistory>;
  readonly items: ReadonlyMap<ItemId, ItemHistory>;
  readonly reached: ReadonlyMap<MilestoneId, MilestoneReached>;
}

/**
 * One line of the ledger. Every figure on every page is a sum of entries.
 *
 * `paid` entries are money that went out (or came in, negative) on that date: bills and sales.
 * `cost` entries are the job cost: labour at its rate, parts, outside work, tools, carriage, fees, and
 * consumables as used. One bill line for a part is both, so it carries both views.
 */
export interface Entry {
  /** Unique and stable for unchanged notes: session id, field and running number. */
  readonly id: string;
  readonly date: IsoDate;
  readonly session: SessionId;
  readonly subsystem: SubsystemId;
  readonly part: PartId | null;
  /** The position the part belongs to; null without a part. */
  readonly position: PositionId | null;
  readonly person: PersonId | null;
  readonly kind: EntryKind;
  readonly what: string;
  /** Labour only. */
  readonly minutes: number | null;
  /** Labour only: what an hour of it is charged at. */
  readonly perHour: Minor | null;
  /** gross = net + tax; negative for money that came in. */
  readonly net: Minor;
  readonly tax: Minor;
  readonly gross: Minor;
  /** How it stands to tax; an entry stands in one way only. */
  readonly standing: TaxStanding;
  /** Null unless rated. */
  readonly taxRate: Fraction | null;
  readonly foreign: Foreign | null;
  readonly bill: string | null;
  readonly consumable: ConsumableId | null;
  /** Why the client is not charged for it; null where he is. */
  readonly notCharged: string | null;
  /** A tax return may deduct it. */
  readonly deductible: boolean;
  /** In which of the two views it counts. The price of the vehicle itself counts in neither. */
  readonly paid: boolean;
  readonly cost: boolean;
  readonly place: Place;
}

/** A movement of a consumable's stock, in order, with what it left on the shelf. Quantities in the consumable's unit, exact. */
export interface StockMovement {
  readonly consumable: ConsumableId;
  readonly kind: 'opening' | 'bought' | 'used' | 'counted' | 'returned';
  readonly date: IsoDate;
  readonly session: SessionId | null;
  /** Positive in, negative out. */
  readonly amount: Fraction;
  /** Same sign as `amount`; minor units. */
  readonly value: Minor;
  readonly left: { readonly amount: Fraction; readonly value: Minor };
  readonly entry: string | null;
  readonly because: string | null;
}

export interface StockAccount {
  readonly consumable: Consumable;
  readonly movements: readonly StockMovement[];
}

/** Money from the client. It lowers no cost. */
export interface ReceivedEntry extends Received {
  readonly id: string;
  readonly date: IsoDate;
  readonly session: SessionId;
}

/** What the vehicle or a part was held to be worth on a day. */
export interface DatedValuation extends Valuation {
  readonly date: IsoDate;
  readonly session: SessionId;
}

export interface Ledger {
  /** By date, session order, then as written. */
  readonly entries: readonly Entry[];
  readonly bills: readonly Bill[];
  readonly stock: ReadonlyMap<ConsumableId, StockAccount>;
  /** By date. */
  readonly received: readonly ReceivedEntry[];
  /** By date. */
  readonly valuations: readonly DatedValuation[];
}

/** The state of one part at a date, from its stays. */
export interface PartState {
  readonly part: PartId;
  readonly at: readonly { readonly where: Whereabouts; readonly count: number; readonly since: Moment }[];
  readonly condition: Condition | null;
}

export interface JournalRecord {
  readonly journal: Journal;
  readonly history: History;
  readonly ledger: Ledger;
  /** The record's day: of its newest note, or the day asked for. It stands as it was at the end of it. */
  readonly day: IsoDate;
  /** Which copy of the record this is. */
  readonly copy: Copy;
}

/** An edition of the record, and the kinds of matter that are not in it. */
export interface Copy {
  readonly name: CopyName;
  readonly leavesOut: readonly LeaveOut[];
}

/** All there is. */
export const WORKSHOP: Copy = { name: 'workshop', leavesOut: [] };

export type { GoneHow };
