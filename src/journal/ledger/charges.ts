import Fraction from 'fraction.js';
import type { FrozenLine, Settings } from '../model.ts';
import type { Entry } from '../record.ts';
import { roundHalfAway } from '../values/decimal.ts';

/** What an entry is charged at. charged = net + markUp + tax. */
export type Charged = Pick<FrozenLine, 'net' | 'markUp' | 'rate' | 'tax' | 'charged'>;

const NOTHING: Charged = { net: 0, markUp: 0, rate: null, tax: 0, charged: 0 };

/**
 * What the client is charged for an entry. Mark-up is on the net. A workshop that is registered for tax charges what
 * things cost it without tax, and its own tax on that and on the mark-up; one that is not has paid the tax for good, and
 * charges the gross. A sale is a credit at what it was sold for. Each figure is rounded once, half away from zero.
 */
export function chargeFor(
  entry: Pick<Entry, 'kind' | 'net' | 'tax' | 'gross' | 'taxRate' | 'notCharged'>,
  settings: Pick<Settings, 'workshop' | 'markUp'>,
): Charged {
  if (entry.notCharged !== null) return NOTHING;
  const { kind, net, gross, tax: paid, taxRate } = entry;
  const own = settings.workshop.tax;
  const markUp = roundHalfAway(settings.markUp.get(kind)?.mul(net) ?? new Fraction(0));
  if (own === null) return { net: gross, markUp, rate: null, tax: 0, charged: gross + markUp };
  if (kind === 'sale') return { net, markUp, rate: taxRate, tax: paid, charged: gross + markUp };
  const tax = roundHalfAway(own.mul(net + markUp));
  return { net, markUp, rate: own, tax, charged: net + markUp + tax };
}
