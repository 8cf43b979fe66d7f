/** What journal.yaml, consumables.yaml and the parts files become: settings, people, subsystems, consumables, parts, positions. */
import type Fraction from 'fraction.js';
import type { Place } from '../diagnostics/place.ts';
import type { ConsumableSource, PartSource } from '../schema/catalogues.ts';
import type { Given, Placed } from '../schema/given.ts';
import type { JournalSource } from '../schema/journal.ts';
import type {
  Component,
  ConsumableId,
  CopyName,
  EntryKind,
  GoneHow,
  Hazard,
  LeaveOut,
  MilestoneId,
  PartId,
  PersonId,
  PositionId,
  StatementShows,
  SubsystemId,
} from '../schema/words.ts';
import type { IsoDate } from '../values/date.ts';
import type { Minor } from '../values/decimal.ts';
import type { Quantity } from '../values/quantity.ts';
import type { Pack } from '../values/units.ts';

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

export interface Vehicle extends Given<Omit<JournalSource['vehicle'], 'marks'>> {
  readonly marks: readonly { readonly what: string; readonly mark: string }[];
}

type AsWritten = 'title' | 'about' | 'arrived' | 'timeZone' | 'locale' | 'stock';

export interface Settings extends Given<Pick<JournalSource, AsWritten>> {
  readonly vehicle: Vehicle;
  /** Who kept the vehicle at first; null where the journal does not say. */
  readonly keeper: PersonId | null;
  readonly arrivedPlace?: Place;
  /** ISO 4217 code, upper case; null for a journal without money. */
  readonly currency: string | null;
  /** Digits after the decimal mark: ISO 4217 minor unit. */
  readonly currencyDigits: number;
  /** Where the site will live, ending in `/`; absent when unknown. */
  readonly address: string | null;
  /** Mark-up on the net of what a client is charged, by entry kind, exact fractions (0.1 is ten per cent). */
  readonly markUp: ReadonlyMap<EntryKind, Fraction>;
  readonly deductible: readonly EntryKind[];
  /** Who does the work. Registered for tax where it has a number, and then charges it at `tax`. */
  readonly workshop: Given<JournalSource['workshop']>;
  readonly client: Given<JournalSource['client']>;
  /** What a statement shows the client besides what is charged. */
  readonly shows: readonly StatementShows[];
  /** What the journal itself says of its copies. */
  readonly copies: ReadonlyMap<CopyName, { readonly leaveOut: readonly LeaveOut[]; readonly maySay: readonly string[] }>;
  /** The picture that the record opens with: its path inside the journal. */
  readonly front: string | null;
  readonly keepPictureFacts: readonly ('time' | 'camera')[];
}

/** A story through many sessions: the parts it is about. */
export interface Thread {
  readonly id: string;
  readonly title: string;
  readonly parts: readonly PartId[];
}

export interface Consumable extends Placed<Pick<ConsumableSource, 'name' | 'unit'>> {
  readonly id: ConsumableId;
  /** Codes of hazard statements, as listed; one that is not known as written. */
  readonly statements: readonly string[];
  /** Hazards of the trade that its statements do not tell. */
  readonly hazards: readonly Hazard[];
  /** How much a tube, a can … of it holds. */
  readonly packs: ReadonlyMap<Pack, Quantity>;
  readonly opening: { readonly amount: Quantity; readonly value: Minor } | null;
}

/** Where (part of) a part is. The counts over all whereabouts of a part add up to its count. */
export type Whereabouts =
  /** On the vehicle; `within` is the part that it is in, where the position is a place in another part. */
  | { readonly at: 'fitted'; readonly position: PositionId; readonly within?: PartId }
  /** In a part that is not on the vehicle: at which place in it, and where that part is. */
  | { readonly at: 'in'; readonly part: PartId; readonly position: PositionId; readonly where: Whereabouts }
  | { readonly at: 'stores' /** null: in stores, unplaced */; readonly store: string | null }
  | { readonly at: 'bag'; readonly bag: number }
  | { readonly at: 'out'; readonly firm: string }
  | { readonly at: 'gone'; readonly how: GoneHow }
  | { readonly at: 'missing' }
  /** The catalogue names a later day. */
  | { readonly at: 'not-yet' }
  /** A candidate that nobody has brought: it was only thought of. */
  | { readonly at: 'considered' };

export interface Part
  extends Placed<Omit<PartSource, 'for' | 'in' | 'found' | 'missing' | 'missingWhich' | 'at' | 'hazard' | 'component'>> {
  readonly subsystem: SubsystemId;
  /** The position it belongs to: its own, or the one it is a candidate for. */
  readonly position: PositionId;
  readonly makesPosition: boolean;
  /** The position that the one it makes is a place in; null on the vehicle itself, and for a candidate. */
  readonly inside: PositionId | null;
  /** A candidate that was only considered is not here until a note brings it. */
  readonly found: NonNullable<PartSource['found']> | 'considered';
  /** How many of a lot were not there as found, while the others were. */
  readonly missing: number;
  /** Which of a numbered lot; null where they cannot be told apart, or none were missing. */
  readonly missingWhich: readonly number[] | null;
  /** Where it lay at the start, or where it was put when acquired. */
  readonly store: string | null;
  /** The bag it was in at the start. */
  readonly bag: number | null;
  readonly hazards: readonly Hazard[];
  readonly components: readonly Component[];
}

/** A place on the vehicle, or in a part; it takes as many as its count. */
export interface Position {
  readonly id: PositionId;
  readonly name: string;
  readonly subsystem: SubsystemId;
  readonly count: number;
  readonly weight: Fraction;
  readonly components: readonly Component[];
  /** The position that this one is a place in: it moves with what stands there. Null on the vehicle itself. */
  readonly inside: PositionId | null;
  /** Parts that belong here, the one that made the position first, then in catalogue order. */
  readonly parts: readonly PartId[];
}
