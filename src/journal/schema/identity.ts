/** identity/<name>.yaml: a points table of the journal's own. */
import * as z from 'zod';
import { bad, ok, type Reading } from '../values/reading.ts';
import { count, fields, listOf, newId, oneOf, read, text } from './fields.ts';
import { ORIGINS } from './words.ts';

const yes = read((written): Reading<boolean> => {
  if (written === 'yes') return ok(true);
  return written === 'no' ? ok(false) : bad('A304', `\`${written}\` is not a word this field takes.`, 'Write `yes` or `no`.');
}, 'no');

/** What a line asks for: one component word, or a named thing that any of several words answers. */
const need = z.preprocess(
  (value) => (typeof value === 'string' ? { of: value } : value),
  fields({ what: text.optional(), of: listOf(newId) }),
);

export const identitySchema = fields({
  title: text,
  source: text,
  address: text.optional(),
  standing: text,
  needed: count,
  from: fields({ line: text, points: count }).optional(),
  lines: z.array(
    fields({
      id: newId,
      words: text,
      points: count,
      asks: listOf(need),
      origins: listOf(oneOf(ORIGINS)).optional(),
      unmodified: yes.optional(),
    }),
  ),
});
export type IdentitySource = z.output<typeof identitySchema>;
