/** consumables.yaml and parts/<subsystem>.yaml. */

import Fraction from 'fraction.js';
import * as z from 'zod';
import { bad, ok, type Reading } from '../values/reading.ts';
import { PACKS, type Pack } from '../values/units.ts';
import { decisive, having, naming } from './facts.ts';
import { condition, count, date, fields, manyOf, maybe, newId, oneOf, prose, quantity, read, text } from './fields.ts';
import { lyingPlace, partName, positionName } from './names.ts';
import { numberInLot } from './number-in-lot.ts';
import { SAID_FOR_HAZARDS, SAID_FOR_PART_ORIGINS } from './said-for.ts';
import { HAZARDS, ORIGINS } from './words.ts';

const weight = read((written): Reading<Fraction> => {
  if (/^\d{1,6}(?:\.\d{1,6})?$/.test(written)) return ok(new Fraction(written));
  return bad('A303', `\`${written}\` is not a weight.`, 'A weight is a number from 0, such as `2` or `0.5`.');
});

export const partSchema = fields({
  id: naming(newId, ['part']),
  name: prose,
  /** Null for a part that is missing as found and never turned up. */
  origin: maybe(oneOf(ORIGINS, SAID_FOR_PART_ORIGINS)),
  evidence: maybe(prose),
  count: decisive(count.default(1)),
  /** How the parts of a lot are told apart: `I to IIII, front to back`. Without it they are only counted. */
  numbered: decisive(maybe(prose)),
  for: decisive(maybe(positionName)),
  /** The position that the one it makes is a place in. */
  in: decisive(maybe(positionName)),
  /** The part in which it was at the start, at its place in that: what came in a donor engine. */
  within: having(maybe(partName), { decisive: true, elsewhere: true }),
  found: maybe(oneOf(['fitted', 'loose', 'missing'])),
  /** How many of a lot were not there as found; of a numbered one `missing-which`. */
  missing: decisive(maybe(count)),
  'missing-which': decisive(manyOf(numberInLot)),
  at: maybe(lyingPlace),
  /** From this day it is here; without it, it was here from the start or only a session can bring it. */
  acquired: maybe(date),
  marks: maybe(prose),
  finish: maybe(prose),
  condition: maybe(condition),
  hazard: manyOf(oneOf(HAZARDS, SAID_FOR_HAZARDS)),
  component: manyOf(newId),
  /** For the originality share; 0 leaves the position out. */
  // A default that is made each time: one that is an object would be copied without its class.
  weight: weight.default(() => new Fraction(1)),
  private: maybe(prose),
  note: maybe(prose),
});
export type PartSource = z.output<typeof partSchema>;

export const partsSchema = having(z.array(partSchema), { brings: 'part' });

const pack = maybe(quantity);

/** How much a tube, a can … of it holds. */
const packs = Object.fromEntries(PACKS.map((name) => [name, pack])) as Record<Pack, typeof pack>;

export const consumableSchema = fields({
  name: prose,
  /** The unit its stock is shown in. */
  unit: having(text, { form: 'as ml, L, g, mm, or each for what is counted in pieces' }),
  ...packs,
  /** Codes of hazard statements. */
  hazards: manyOf(text),
  /** Hazards of the trade. */
  hazard: manyOf(oneOf(HAZARDS, SAID_FOR_HAZARDS)),
  opening: maybe(fields({ amount: quantity, value: maybe(text) })),
});
export type ConsumableSource = z.output<typeof consumableSchema>;

export const consumablesSchema = having(z.record(z.string(), consumableSchema), { brings: 'consumable' });
