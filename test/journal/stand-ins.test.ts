import { expect, test } from 'vitest';
import * as z from 'zod';
import { fieldNames } from '../../src/journal/read/schema-at.ts';
import { consumableSchema, partSchema } from '../../src/journal/schema/catalogues.ts';
import { factsOf } from '../../src/journal/schema/facts.ts';
import { identitySchema } from '../../src/journal/schema/identity.ts';
import { journalSchema } from '../../src/journal/schema/journal.ts';
import { sessionSchema } from '../../src/journal/schema/session.ts';

/** Every kind of value in a schema that has a stand-in. */
function kindsIn(kind: z.core.$ZodType, seen = new Set<z.core.$ZodType>()): Set<z.core.$ZodType> {
  if (seen.has(kind)) return seen;
  seen.add(kind);
  const def = kind._zod.def as unknown as Record<string, unknown>;
  const held = [def.innerType, def.element, def.valueType, def.in, def.out, ...Object.values((def.shape as object | undefined) ?? {})];
  for (const each of [...held, ...((def.options as unknown[] | undefined) ?? [])]) {
    if (each instanceof z.core.$ZodType) kindsIn(each, seen);
  }
  return seen;
}

const SCHEMAS = [sessionSchema, partSchema, consumableSchema, identitySchema, journalSchema];

test('what stands for a value with a fault is a value of its kind', () => {
  const kinds = SCHEMAS.flatMap((schema) => [...kindsIn(schema)]);
  const standing = kinds.flatMap((kind) => {
    const { standIn } = factsOf(kind);
    return standIn === undefined ? [] : [z.safeParse(kind, standIn).success];
  });
  expect(standing.length).toBeGreaterThan(40);
  expect(standing).not.toContain(false);
});

test('the names of fields are found however deep they lie', () => {
  expect(fieldNames(sessionSchema)).toEqual(new Set([...fieldNames(sessionSchema), 'hours', 'by', 'lines', 'discount', 'with-open']));
  expect(fieldNames(journalSchema).has('per-hour')).toBe(true);
});
