/** What the format's own schemas say, as JSON Schema (2020-12), for whatever reads such schemas. */
import * as z from 'zod';
import type { Sort } from '../../journal/diagnostics/diagnostic.ts';
import { isListOfGroups } from '../../journal/read/schema-at.ts';
import { type Facts, factsOf } from '../../journal/schema/facts.ts';

/** YAML makes numbers and truth values of some texts; to the format they are what was typed. */
const SCALAR = ['string', 'number', 'boolean'] as const;

/**
 * What may be written, not what it comes to: all scalars as text, number or truth value; a list of one with or without
 * its brackets; words in whatever capitals. Whether names are known only the whole journal can tell.
 *
 * @param schema of a file, or of a note's fields
 */
export function jsonSchemaOf(schema: z.ZodType, title: string): object {
  const groups: Record<string, Json> = {};
  const override = (each: Overridden): void => asWritten(each, groups);
  const { $schema, ...rest } = z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'input', unrepresentable: 'any', override });
  return { $schema, title, ...rest, $defs: groups };
}

/**
 * Called for each kind from the inside out; one that only wraps another gets what was made of that.
 *
 * @param groups gets the entries of lists, which are told of once
 */
function asWritten({ zodSchema, jsonSchema, path }: Overridden, groups: Record<string, Json>): void {
  const json = jsonSchema as Json;
  const facts = factsOf(zodSchema);
  // A default is what absence means to the program, in its own values.
  delete json.default;
  // Names are texts in whatever way they are read.
  if (json.propertyNames?.type !== undefined) delete json.propertyNames;
  if (json.type === 'string') json.type = SCALAR;
  const isScalar = json.type === SCALAR;
  const description = isScalar ? inWords(facts) : null;
  if (description !== null) json.description = description;
  if (isScalar && facts.words !== undefined) into(json, { anyOf: anyOfWords(facts.words) });
  else if (isScalar && facts.several === true) into(json, orMany({ ...json }));
  else if (json.type === 'object' && facts.alone !== undefined) into(json, { anyOf: [{ ...json }, { type: SCALAR }] });
  else if (json.type === 'array' && path.length > 0 && isListOfGroups(zodSchema as z.ZodType, [])) {
    const name = path.filter((step) => typeof step === 'string' && !['properties', 'items', 'anyOf'].includes(step)).join('-');
    groups[name] = json.items ?? {};
    into(json, orMany({ $ref: `#/$defs/${name}` }));
  } else if (json.type === 'array' && facts.oneOrMany === true) into(json, orMany(json.items ?? {}));
}

interface Overridden {
  readonly zodSchema: z.core.$ZodType;
  readonly jsonSchema: object;
  readonly path: readonly PropertyKey[];
}

/** A schema whose types may be several. */
interface Json {
  type?: string | readonly string[];
  anyOf?: readonly Json[];
  items?: Json;
  propertyNames?: Json;
  [keyword: string]: unknown;
}

/** Puts one schema in the place of another, which others hold. */
function into(json: Json, other: Json): void {
  for (const name of Object.keys(json)) delete json[name];
  Object.assign(json, other);
}

const orMany = (one: Json): Json => ({ anyOf: [one, { type: 'array', items: one }] });

/** The words, for completion; and the same in other letters. YAML of old reads `yes` as true. */
function anyOfWords(words: readonly string[]): Json[] {
  const letter = (sign: string): string => (/[a-z]/.test(sign) ? `[${sign}${sign.toUpperCase()}]` : sign === '-' ? '[-_\\s]+' : sign);
  const pattern = `^(?:${words.map((word) => [...word].map(letter).join('')).join('|')})$`;
  const values = words.flatMap((word): (string | number | boolean)[] => {
    if (/^\d+$/.test(word)) return [word, Number(word)];
    return word === 'yes' ? [word, true] : word === 'no' ? [word, false] : [word];
  });
  return [{ enum: values }, { type: 'string', pattern }];
}

const SORT_WORDS: Readonly<Record<Sort, string>> = {
  part: 'a part by its id',
  position: 'a position by the id of the part that makes it',
  person: 'a person by the id in journal.yaml',
  subsystem: 'a subsystem by its id',
  milestone: 'a milestone by its id',
  consumable: 'a consumable by its id',
  store: 'a store by its name',
  item: 'an open item by its id',
  bag: 'a bag by its number',
  session: 'a session by its id or its day',
};

/** How a text is written, or what it names; null where nothing is known of it. */
export function inWords({ form, names }: Facts): string | null {
  if (form !== undefined) return form;
  if (names === undefined) return null;
  return (typeof names === 'function' ? names({}) : names).map((sort) => SORT_WORDS[sort]).join(', or ');
}
