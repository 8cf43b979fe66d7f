/**
 * A bill from its texts: every amount read, tax parted from it, discount and carriage shared out over the
 * lines, and the total on the paper compared with what the lines make.
 */
import Fraction from 'fraction.js';
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { Bill, BillLine, BoughtAs, ConsumableId, IsoDate, Place, Quantity, SessionId, Settings, Tax } from '../model.ts';
import { sumExact } from '../values/decimal.ts';
import { type AtRate, currencyDigits, formatMoney, type Money, readAtRate, readForeign, readMoney } from '../values/money.ts';
import type { Reading } from '../values/reading.ts';
import { readTax, type Taxed, UNSAID } from '../values/tax.ts';
import { type Reckoned, reckonBill } from './reckon-bill.ts';

/** One line as the note has it: money is still text, references are resolved. */
export interface LineSource {
  readonly what: string;
  readonly as: BoughtAs;
  readonly consumable: ConsumableId | null;
  readonly amount: Quantity | null;
  /** Weights as written; they need not add up to 1. */
  readonly charges: BillLine['charges'];
  readonly cost: string;
  readonly tax: string | null;
  readonly refund: string | null;
}

/** A bill as the note has it. */
export interface BillSource {
  readonly from: string | null;
  readonly paper: string | null;
  /** `EUR @ 0.8571` when all its amounts are in that currency. */
  readonly currency: string | null;
  readonly total: string | null;
  readonly discount: string | null;
  readonly carriage: string | null;
  /** For carriage, discount, and lines that say nothing of their own. */
  readonly tax: string | null;
  readonly lines: readonly LineSource[];
  /** Where a field of the bill, or of a line (counted from 0), is written; `''` is the whole. */
  placeOf(field: string, line?: number): Place;
}

/** Whose bill it is. */
export interface BillHead {
  readonly id: string;
  readonly session: SessionId;
  readonly date: IsoDate;
}

type MoneySettings = Pick<Settings, 'currency' | 'currencyDigits' | 'locale'>;

/** Reads texts at places, and keeps what went wrong. */
interface Desk {
  readonly diagnostics: Diagnostic[];
  readonly settings: MoneySettings;
  take<T>(reading: Reading<T>, place: Place): T | null;
  money(text: string, atRate: AtRate | null, place: Place): Money | null;
}

/**
 * Makes the bill, or says why not.
 *
 * @returns `bill` is null only when an amount could not be read; a bill that does not add up (A806)
 * is returned as its lines have it
 */
export function billOf(source: BillSource, head: BillHead, settings: MoneySettings): { bill: Bill | null; diagnostics: Diagnostic[] } {
  const desk = deskFor(settings);
  const read = readBill(source, desk);
  if (read === null || !sharesOut(source, read, desk)) return { bill: null, diagnostics: desk.diagnostics };
  const reckoned = reckonBill(read.own, read.total?.[read.in] ?? null, read.in === 'foreign' ? read.foreign : read.own);
  checkTotal(source, read, reckoned, desk);
  return { bill: assemble(source, head, read, reckoned.own), diagnostics: desk.diagnostics };
}

function deskFor(settings: MoneySettings): Desk {
  const diagnostics: Diagnostic[] = [];
  const take: Desk['take'] = (reading, place) => {
    if (reading.ok) return reading.value;
    diagnostics.push(diagnostic(reading.code, place, reading.problem, { hint: reading.hint }));
    return null;
  };
  const { currency, currencyDigits: digits } = settings;
  const money: Desk['money'] = (text, atRate, place) =>
    take(atRate ? readForeign(text, atRate, digits) : readMoney(text, currency, digits), place);
  return { diagnostics, settings, take, money };
}
