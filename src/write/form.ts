/** The fields of a schema as the page makes forms of them. What a schema takes, the form offers: there is no list of fields besides. */
import type * as z from 'zod';
import type { Sort } from '../journal/diagnostics/diagnostic.ts';
import { buildOf, isRequired } from '../journal/read/schema-at.ts';
import { factsOf, type WrittenAs } from '../journal/schema/facts.ts';

/** One field of a form, as plain data. */
export interface FormField {
  readonly name: string;
  /** `fields`: a group of fields; `table`: values under names that one gives; else what is written is text. */
  readonly of: 'text' | 'fields' | 'table';
  /** Any number of them. */
  readonly many: boolean;
  readonly required: boolean;
  /** Something is said in words, at length. */
  readonly prose: boolean;
  readonly words: readonly string[] | null;
  readonly names: readonly Sort[];
  readonly writtenAs: WrittenAs | null;
  /** Several may be named where one is meant; the entry then says the same of each. */
  readonly several: boolean;
  /** An entry of which only a text is written says this field by it. */
  readonly alone: string | null;
  /** Of a group, and of what stands in a table. */
  readonly fields: readonly FormField[];
}

/** @returns the fields of a group, in the order of the schema; none for a schema that is no group */
export function formOf(schema: z.core.$ZodType): FormField[] {
  const build = buildOf(schema);
  return build.of === 'fields' ? build.fields.map(([name, kind]) => fieldOf(name, kind)) : [];
}

function fieldOf(name: string, kind: z.core.$ZodType): FormField {
  const build = buildOf(kind);
  const many = build.of === 'list';
  const item = many ? build.item : kind;
  const built = many ? buildOf(item) : build;
  const facts = { ...factsOf(item), ...factsOf(kind) };
  return {
    name,
    of: built.of === 'list' ? 'text' : built.of,
    many,
    required: isRequired(kind) && facts.standIn !== undefined,
    prose: facts.prose === true,
    words: facts.words ?? null,
    names: facts.names ?? [],
    writtenAs: facts.writtenAs ?? null,
    several: facts.several === true,
    alone: facts.alone ?? null,
    fields: built.of === 'table' ? [fieldOf('', built.value)] : formOf(item),
  };
}
