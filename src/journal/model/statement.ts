/** Statements that were closed: what a client was sent. */
import type Fraction from 'fraction.js';
import type { Place } from '../diagnostics/place.ts';
import type { EntryKind, PersonId, SubsystemId } from '../schema/words.ts';
import type { IsoDate } from '../values/date.ts';
import type { Minor } from '../values/decimal.ts';

/** One entry as it was charged. charged = net + markUp + tax. */
export interface FrozenLine {
  /** The id of the entry. */
  readonly entry: string;
  readonly date: IsoDate;
  readonly kind: EntryKind;
  readonly what: string;
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
}

export interface FrozenStatement {
  readonly number: number;
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly charged: Minor;
  readonly lines: readonly FrozenLine[];
  readonly place: Place;
}
