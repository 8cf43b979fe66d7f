/** How money stands to tax, and how a seller reckoned it, in words. */
import type { BillWay } from '../journal/model.ts';
import { toDecimal } from '../journal/values/decimal.ts';
import type { TaxPart } from '../journal/values/tax.ts';
import type { TaxWay } from '../journal/values/tax-ways.ts';

/** `At 20 %`, `Exempt`: what a row of a table by tax is called. */
export function standingWords({ standing, rate }: Pick<TaxPart, 'standing' | 'rate'>): string {
  if (rate !== null) return `At ${toDecimal(rate.mul(100), 4)} %`;
  if (standing === 'exempt') return 'Exempt';
  return standing === 'several' ? 'Consumables, with the tax they were bought with' : 'No tax said';
}

const WAYS: Readonly<Record<TaxWay, string>> = {
  line: 'on each line, rounded',
  rate: 'once for each rate, rounded',
  'line-cut': 'on each line, cut',
  'rate-cut': 'once for each rate, cut',
  'line-half': 'on each line to the half unit, the sum cut',
  'line-tenth': 'on each line cut to a tenth of the unit, the sum cut',
};

/** `Sold, at 20 %`: a row of what was sold, which is set against nothing that was bought. */
export function soldWords(row: Pick<TaxPart, 'standing' | 'rate'>): string {
  const standing = standingWords(row);
  return `Sold, ${standing.charAt(0).toLowerCase()}${standing.slice(1)}`;
}

/** `Tax once for each rate, rounded`: how the total on the paper was reckoned. */
export function wayWords({ tax, sharedFirst }: BillWay): string {
  return `Tax ${WAYS[tax]}${sharedFirst ? '; carriage and discount shared out before it' : ''}`;
}
