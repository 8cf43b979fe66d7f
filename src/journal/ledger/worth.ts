import type Fraction from 'fraction.js';
import type { Minor } from '../model.ts';
import { roundHalfAway } from '../values/money.ts';

/** What stock is worth: what was paid for it, and the tax inside that. */
export interface Worth {
  readonly gross: Minor;
  readonly tax: Minor;
}

export const NO_WORTH: Worth = { gross: 0, tax: 0 };

export function plus(a: Worth, b: Worth): Worth {
  return { gross: a.gross + b.gross, tax: a.tax + b.tax };
}

export function minus(a: Worth, b: Worth): Worth {
  return { gross: a.gross - b.gross, tax: a.tax - b.tax };
}

/** The part of a worth that falls to `amount` of `whole`, each figure rounded half away from zero. */
export function partOf(worth: Worth, amount: Fraction, whole: Fraction): Worth {
  const share = amount.div(whole);
  return { gross: roundHalfAway(share.mul(worth.gross)), tax: roundHalfAway(share.mul(worth.tax)) };
}

/** Worth that is never below nothing. */
export function atLeastNothing(worth: Worth): Worth {
  return { gross: Math.max(0, worth.gross), tax: Math.max(0, worth.tax) };
}
