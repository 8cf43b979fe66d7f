/** Statements that were closed: what a client was sent. */
import type Fraction from 'fraction.js';
import type { Place } from '../diagnostics/place.ts';
import type { EntryKind, PersonId, StatementShows, SubsystemId } from '../schema/words.ts';
import type { IsoDate } from '../values/date.ts';
import type { Minor } from '../values/decimal.ts';
import type { TaxPart } from '../values/tax.ts';

/** One entry as it was charged, or shown as not charged. charged = net + markUp + tax. */
export interface FrozenLine {
  /** The id of the entry. */
  readonly entry: string;
  readonly date: IsoDate;
  readonly kind: EntryKind;
  readonly what: string;
  /** Of labour: the title of its note, which says what was done. Null for all else, and where its file does not keep it. */
  readonly title: string | null;
  readonly subsystem: SubsystemId;
  readonly person: PersonId | null;
  readonly minutes: number | null;
  /** Of labour: what an hour is charged at, without tax. */
  readonly perHour: Minor | null;
  /** What it cost the workshop, gross. */
  readonly cost: Minor;
  /** Without tax where the workshop is registered for it; else what it cost, tax and all. */
  readonly net: Minor;
  readonly markUp: Minor;
  /** The rate of the tax that is charged; null where none is. */
  readonly rate: Fraction | null;
  readonly tax: Minor;
  readonly charged: Minor;
  /** Why it is not charged; null where it is. */
  readonly notCharged: string | null;
}

/** What the workshop paid, or sold for, by how that stands to tax. */
export interface PaidAtTax extends TaxPart {
  /** A sale: a credit, of which every figure is negative. */
  readonly sold: boolean;
}

/** Money that came in, as a statement tells of it. */
export interface FrozenReceipt {
  readonly date: IsoDate;
  readonly from: string;
  readonly for: string | null;
  readonly amount: Minor;
}

/** What a client was charged, what came in, what is owed and since when. */
export interface ClientAccount {
  /** On closed statements. */
  readonly stated: Minor;
  /** For work and materials that are on none yet. */
  readonly open: Minor;
  readonly received: Minor;
  /** stated + open − received; negative where more came in than was charged. */
  readonly owed: Minor;
  /** The last day of the oldest statement that is not covered; null where none is. Money covers statements first, the oldest first. */
  readonly since: IsoDate | null;
}

/** What the lines at the head of a statement are called. */
export const HEAD_NAMES = {
  from: 'From',
  taxNumber: 'Tax number',
  to: 'To',
  reference: 'Reference',
  vehicle: 'For',
  terms: 'Terms',
  due: 'To pay by',
} as const;

/** Those that tell who the two are. */
export const HEAD_OF_PEOPLE: ReadonlySet<string> = new Set([HEAD_NAMES.from, HEAD_NAMES.taxNumber, HEAD_NAMES.to, HEAD_NAMES.reference]);

/** A line at the head of a statement: `To`, and who that is. */
export interface HeadLine {
  readonly name: string;
  readonly words: string;
}

/** What a statement was sent with besides its lines, as it stood then. */
export interface SentWith {
  /** Who sent it and to whom, a line each; null until it is sent: as journal.yaml has it. */
  readonly head: readonly HeadLine[] | null;
  /** The workshop was registered for tax. */
  readonly registered: boolean;
  readonly shows: readonly StatementShows[];
  readonly inside: readonly PaidAtTax[];
  readonly received: readonly FrozenReceipt[];
  readonly account: ClientAccount;
}

export interface FrozenStatement {
  readonly number: number;
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly charged: Minor;
  readonly lines: readonly FrozenLine[];
  /** Null where its file does not keep it. */
  readonly sentWith: SentWith | null;
  readonly place: Place;
}
