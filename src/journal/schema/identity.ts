/** identity/<name>.yaml: a points table of the journal's own. */
import * as z from 'zod';
import { count, fields, listOf, maybe, newId, oneOf, prose, text, yes } from './fields.ts';
import { ORIGINS } from './words.ts';

/** What a line asks for: one component word, or a named thing that any of several words answers. */
const need = z.preprocess(
  (value) => (typeof value === 'string' ? { of: value } : value),
  fields({ what: maybe(prose), of: listOf(newId) }),
);

export const identitySchema = fields({
  title: prose,
  source: text,
  address: maybe(text),
  standing: text,
  /** Which vehicles the table is for. */
  vehicles: maybe(prose),
  needed: count,
  from: maybe(fields({ line: text, points: count })),
  lines: z.array(
    fields({
      id: newId,
      words: prose,
      points: count,
      asks: listOf(need),
      origins: listOf(oneOf(ORIGINS)).default(['original']),
      unmodified: yes.default(false),
    }),
  ),
});
export type IdentitySource = z.output<typeof identitySchema>;
