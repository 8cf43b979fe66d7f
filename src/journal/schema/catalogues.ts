/** consumables.yaml and parts/<subsystem>.yaml. */

import Fraction from 'fraction.js';
import * as z from 'zod';
import { readQuantity } from '../values/quantity.ts';
import { bad, ok, type Reading } from '../values/reading.ts';
import { condition, count, date, fields, listOf, newId, oneOf, read, text } from './fields.ts';
import { HAZARDS, ORIGINS } from './words.ts';

const weight = read((written): Reading<Fraction> => {
  if (/^\d{1,6}(?:\.\d{1,6})?$/.test(written)) return ok(new Fraction(written));
  return bad('A303', `\`${written}\` is not a weight.`, 'A weight is a number from 0, such as `2` or `0.5`.');
});

export const partSchema = fields({
  id: newId,
  name: text,
  origin: oneOf(ORIGINS).optional(),
  evidence: text.optional(),
  count: count.optional(),
  for: text.optional(),
  found: oneOf(['fitted', 'loose', 'missing']).optional(),
  at: text.optional(),
  acquired: date.optional(),
  marks: text.optional(),
  finish: text.optional(),
  condition: condition.optional(),
  hazard: listOf(oneOf(HAZARDS)).optional(),
  component: listOf(newId).optional(),
  weight: weight.optional(),
  private: text.optional(),
  note: text.optional(),
});
export type PartSource = z.output<typeof partSchema>;

export const partsSchema = z.array(partSchema);

export const consumableSchema = fields({
  name: text,
  unit: text,
  hazards: listOf(text).optional(),
  opening: fields({ amount: read(readQuantity), value: text }).optional(),
});
export type ConsumableSource = z.output<typeof consumableSchema>;

export const consumablesSchema = z.record(z.string(), consumableSchema);
