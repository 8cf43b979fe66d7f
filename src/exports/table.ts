/** A table of figures, before it becomes a file of some kind. */
import type Fraction from 'fraction.js';
import type { Foreign, IsoDate, Minor, Settings } from '../journal/model.ts';
import { toDecimal } from '../journal/values/decimal.ts';
import { currencyDigits, minorToDecimal } from '../journal/values/money.ts';

/** An exact number in decimal, which a program reads as a number. */
export interface Decimal {
  readonly decimal: string;
  /** Money of this currency, by its code. */
  readonly currency?: string;
  /** A share of one, to be shown in per cent. */
  readonly share?: boolean;
}

/** A calendar date. */
export interface Day {
  readonly day: IsoDate;
}

/** Text, a whole number, an exact decimal, a date, or nothing. */
export type Cell = string | number | Decimal | Day | null;

export interface Table {
  /** The name of its file and its sheet. */
  readonly name: string;
  readonly columns: readonly string[];
  readonly rows: readonly (readonly Cell[])[];
  /** Sums that a workbook has under the rows. */
  readonly totals?: readonly Total[];
}

/** The sum of some columns, by name: of the rows shown, or of those in which a column has a value. */
export interface Total {
  readonly words: string;
  readonly of: readonly string[];
  readonly where?: readonly [column: string, value: string];
}

/** An amount of money as a plain decimal in the journal's currency. */
export function money(minor: Minor, { currency, currencyDigits }: Pick<Settings, 'currency' | 'currencyDigits'>): Decimal {
  return { decimal: minorToDecimal(minor, currencyDigits), ...(currency === null ? {} : { currency }) };
}

/** More decimals than any amount here needs to be told apart from its neighbour. */
const PLACES = 9;

/** An exact number, to nine decimals where it does not end before. */
export function number(exact: Fraction): Decimal {
  return { decimal: toDecimal(exact, PLACES) };
}

/** A share of one, such as a rate of tax. */
export function share(exact: Fraction): Decimal {
  return { ...number(exact), share: true };
}

export function day(date: IsoDate): Day {
  return { day: date };
}

/** The amount on the bill in its own currency: the code, the amount, and the rate it was turned over at. */
export function foreignCells(foreign: Foreign | null): [Cell, Cell, Cell] {
  if (foreign === null) return [null, null, null];
  const { currency, amount, rate } = foreign;
  return [currency, { decimal: minorToDecimal(amount, currencyDigits(currency) ?? 2), currency }, { decimal: rate }];
}
