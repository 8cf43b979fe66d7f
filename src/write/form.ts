/** The fields of a schema as the page makes forms of them. What a schema takes, the form offers: there is no list of fields besides. */
import type * as z from 'zod';
import type { Sort } from '../journal/diagnostics/diagnostic.ts';
import { buildOf, isRequired } from '../journal/read/schema-at.ts';
import { type Facts, factsOf, type Offered, type WrittenAs } from '../journal/schema/facts.ts';

/** One field of a form, as plain data. */
export interface FormField {
  readonly name: string;
  /** `fields`: a group of fields; `table`: values under names that one gives; else what is written is text. */
  readonly of: 'text' | 'fields' | 'table';
  /** Any number of them. */
  readonly many: boolean;
  readonly required: boolean;
  /** An evening without it is rare. */
  readonly everyEvening: boolean;
  /** Something is said in words, at length. */
  readonly prose: boolean;
  readonly words: readonly string[] | null;
  readonly names: readonly Sort[];
  readonly writtenAs: WrittenAs | null;
  /** What is offered to be written, besides anything else. */
  readonly offers: Offered | null;
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
  if (build.of !== 'fields') return [];
  const entries = entriesWith(build.fields);
  return build.fields.map(([name, kind]) => fieldOf(name, kind, entries));
}

type Entry = Readonly<Record<string, string>>;

/** An entry for each word that one of its fields takes: what a field names may hang on it. */
function entriesWith(fields: readonly (readonly [string, z.core.$ZodType])[]): Entry[] {
  return [{}, ...fields.flatMap(([name, kind]) => (factsOfItem(kind).words ?? []).map((word) => ({ [name]: word })))];
}

function factsOfItem(kind: z.core.$ZodType): Facts {
  const build = buildOf(kind);
  return build.of === 'list' ? { ...factsOf(build.item), ...factsOf(kind) } : factsOf(kind);
}

/** All that a field may name, in whatever entry. */
function namedBy(names: Facts['names'], entries: readonly Entry[]): Sort[] {
  return [...new Set(typeof names === 'function' ? entries.flatMap((entry) => names(entry)) : names)];
}

function fieldOf(name: string, kind: z.core.$ZodType, entries: readonly Entry[]): FormField {
  const build = buildOf(kind);
  const many = build.of === 'list';
  const item = many ? build.item : kind;
  const built = many ? buildOf(item) : build;
  const facts = factsOfItem(kind);
  return {
    name,
    of: built.of === 'list' ? 'text' : built.of,
    many,
    required: isRequired(kind),
    everyEvening: facts.everyEvening === true,
    prose: facts.prose === true,
    words: facts.words ?? null,
    // A name that is made here is none of those that there are.
    names: facts.writtenAs === 'new-id' ? [] : namedBy(facts.names, entries),
    writtenAs: facts.writtenAs ?? null,
    offers: facts.offers ?? null,
    several: facts.several === true,
    alone: facts.alone ?? null,
    fields: built.of === 'table' ? [fieldOf('', built.value, [])] : formOf(item),
  };
}
