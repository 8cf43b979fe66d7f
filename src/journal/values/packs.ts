import type Fraction from 'fraction.js';
import { convertTo, type Quantity } from './quantity.ts';
import { bad, type Reading } from './reading.ts';
import { PACKS, type Pack } from './units.ts';

/** What is kept in a unit and may be bought by the tube, the can … */
export interface Kept {
  readonly name: string;
  /** The unit its stock is kept in. */
  readonly unit: string;
  /** How much each of its packs holds. */
  readonly packs: ReadonlyMap<Pack, Quantity>;
}

/** An amount of it in its unit, exact; A309 where that cannot be told. */
export function stockAmount(amount: Quantity, { name, unit, packs }: Kept): Reading<Fraction> {
  const pack = PACKS.find((one) => one === amount.unit);
  if (pack === undefined || pack === unit) return convertTo(amount, unit);
  const holds = packs.get(pack);
  if (holds === undefined) {
    return bad('A309', `How much a ${pack} of ${name} holds is not said.`, `Say it in consumables.yaml, such as \`${pack}: 1 ${unit}\`.`);
  }
  const one = convertTo(holds, unit);
  return one.ok ? { ok: true, value: one.value.mul(amount.value) } : one;
}
