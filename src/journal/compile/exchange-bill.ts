/** A bill in another currency, turned into the journal's own. */
import Fraction from 'fraction.js';
import { currencyDigits } from '../values/currency.ts';
import { type Minor, roundHalfAway } from '../values/decimal.ts';
import type { AtRate } from '../values/money.ts';
import { apportion } from '../values/share-out.ts';
import { mergeParts, sumTaxed, type TaxPart } from '../values/tax.ts';
import type { Reckoned } from './reckon-bill.ts';

/**
 * The bill is turned over as a whole, gross and tax rounded once each, and shared over its lines by largest
 * remainder: its lines and its rounding add up to what was paid for it, whatever the rate.
 *
 * @param digits decimals of the journal's own currency
 */
export function exchangeBill(bill: Reckoned, { currency, rate }: AtRate, digits: number): Reckoned {
  const one = new Fraction(rate).mul(10n ** BigInt(digits), 10n ** BigInt(currencyDigits(currency) ?? 2));
  const whole = (minor: Minor): Minor => roundHalfAway(one.mul(minor));
  const parts = [...bill.lines.flatMap((line) => line.parts), ...bill.rounding];
  const { tax, gross } = sumTaxed(parts);
  const nets = apportion(
    whole(gross) - whole(tax),
    parts.map((part) => one.mul(part.net)),
  );
  const taxes = apportion(
    whole(tax),
    parts.map((part) => one.mul(part.tax)),
  );
  let next = 0;
  const turnedOver = (part: TaxPart): TaxPart => {
    const [net = 0, of = 0] = [nets[next], taxes[next]];
    next += 1;
    return { ...part, net, tax: of, gross: net + of };
  };
  const lines = bill.lines.map((line) => {
    const own = mergeParts(line.parts.map(turnedOver));
    return { ...sumTaxed(own), parts: own };
  });
  const rounding = bill.rounding.map(turnedOver);
  const [discount, carriage, total] = [whole(bill.discount), whole(bill.carriage), whole(gross)];
  return { lines, discount, carriage, rounding, total, linesBefore: total - sumTaxed(rounding).gross + discount - carriage };
}
