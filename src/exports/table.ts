/** A table of figures, before it becomes a file of some kind. */
import type Fraction from 'fraction.js';
import type { Foreign, IsoDate, Minor, Settings } from '../journal/model.ts';
import { toDecimal } from '../journal/values/decimal.ts';
import { currencyDigits, minorToDecimal } from '../journal/values/money.ts';

/** An exact number in decimal, which a program reads as a number. */
export interface Decimal {
  readonly decimal: string;
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
}

/** An amount of money as a plain decimal in the journal's currency. */
export function money(minor: Minor, { currencyDigits }: Pick<Settings, 'currencyDigits'>): Decimal {
  return { decimal: minorToDecimal(minor, currencyDigits) };
}

/** More decimals than any amount here needs to be told apart from its neighbour. */
const PLACES = 9;

/** An exact number, to nine decimals where it does not end before. */
export function number(exact: Fraction): Decimal {
  return { decimal: toDecimal(exact, PLACES) };
}

export function day(date: IsoDate): Day {
  return { day: date };
}

/** The amount on the bill in its own currency: the code, the amount, and the rate it was turned over at. */
export function foreignCells(foreign: Foreign | null): [Cell, Cell, Cell] {
  if (foreign === null) return [null, null, null];
  const { currency, amount, rate } = foreign;
  return [currency, { decimal: minorToDecimal(amount, currencyDigits(currency) ?? 2) }, { decimal: rate }];
}
