/** What a schema says of the value at a path: its fields, whether it may be absent, and a text that can stand for it. */
import type * as z from 'zod';
import { type Facts, factsOf } from '../schema/facts.ts';
import type { Path, Value } from './source/tree.ts';

interface Definition {
  readonly type: string;
  readonly shape?: Record<string, z.core.$ZodType>;
  readonly element?: z.core.$ZodType;
  readonly valueType?: z.core.$ZodType;
  readonly innerType?: z.core.$ZodType;
  readonly in?: z.core.$ZodType;
  readonly out?: z.core.$ZodType;
  readonly options?: readonly z.core.$ZodType[];
}

export type Kind = z.core.$ZodType | undefined;

function definitionOf(kind: Kind): Definition | undefined {
  return kind?._zod.def as unknown as Definition | undefined;
}

/** Looks through optional, transformed and alternative schemas to the one that holds fields. */
function open(kind: Kind): Kind {
  const def = definitionOf(kind);
  if (!def) return kind;
  if (def.innerType) return open(def.innerType);
  if (def.type === 'pipe') return open(definitionOf(def.out)?.type === 'transform' ? def.in : def.out);
  if (def.type === 'union') return open(def.options?.at(-1));
  return kind;
}

/** The kind of what a value of a kind holds: a field of a group, an item of a list, what stands under a name. */
export function kindWithin(kind: Kind, step: PropertyKey): Kind {
  const def = definitionOf(open(kind));
  const { shape } = def ?? {};
  // A name such as `constructor` is of every object, and of no schema.
  const field = shape !== undefined && Object.hasOwn(shape, String(step)) ? shape[String(step)] : undefined;
  return field ?? def?.element ?? def?.valueType;
}

/** Whether a value of a kind is a group whose names are the user's, as against fields. */
export function isByName(kind: Kind): boolean {
  return definitionOf(open(kind))?.valueType !== undefined;
}

/** Whether a value of a kind is a list; one value may stand for a list of one. */
export function isList(kind: Kind): boolean {
  return definitionOf(open(kind))?.element !== undefined;
}

/** The kind of the value at a path. */
export function kindAt(schema: z.ZodType, path: Path): Kind {
  return path.reduce<Kind>(kindWithin, schema);
}

/** How the values of a schema are built. */
export type Build =
  | { readonly of: 'fields'; readonly fields: readonly (readonly [name: string, kind: z.core.$ZodType])[] }
  | { readonly of: 'list'; readonly item: z.core.$ZodType }
  | { readonly of: 'table'; readonly value: z.core.$ZodType }
  | { readonly of: 'text' };

export function buildOf(kind: z.core.$ZodType): Build {
  const def = definitionOf(open(kind));
  if (def?.shape) return { of: 'fields', fields: Object.entries(def.shape) };
  if (def?.element) return { of: 'list', item: def.element };
  return def?.valueType ? { of: 'table', value: def.valueType } : { of: 'text' };
}

/** Whether a field of this kind must be written. */
export function isRequired(kind: z.core.$ZodType): boolean {
  return !['default', 'prefault', 'optional'].includes(definitionOf(kind)?.type ?? '');
}

export function isRequiredAt(schema: z.ZodType, path: Path): boolean {
  const kind = kindAt(schema, path);
  return kind !== undefined && isRequired(kind);
}

/** The names of the fields a schema takes at a path. */
export function fieldsAt(schema: z.ZodType, path: Path): string[] {
  return Object.keys(definitionOf(open(kindAt(schema, path)))?.shape ?? {});
}

/** What is known of the field, or of the entries of the list, at a path. */
export function factsAt(schema: z.ZodType, path: Path): Facts {
  return factsOf(kindAt(schema, path));
}

/** Whether a value of a kind is a list of texts. */
export function isListOfTexts(kind: z.core.$ZodType): boolean {
  const build = buildOf(kind);
  return build.of === 'list' && buildOf(build.item).of === 'text';
}

/** Whether a list of entries, each a group of fields, is expected at a path. */
export function isListOfGroups(schema: z.ZodType, path: Path): boolean {
  const { element } = definitionOf(open(kindAt(schema, path))) ?? {};
  return definitionOf(open(element))?.shape !== undefined;
}

/** Whether an entry means something else, or nothing, without the field at a path. */
export function isDecisiveAt(schema: z.ZodType, path: Path): boolean {
  const kind = kindAt(schema, path);
  return factsOf(kind).decisive ?? (kind !== undefined && isRequired(kind));
}

/** A value that the schema takes at a path, whatever it means; undefined when there is none so simple. */
export function standInAt(schema: z.ZodType, path: Path): Value | undefined {
  const kind = kindAt(schema, path);
  const { standIn } = factsOf(kind);
  if (standIn !== undefined) return standIn;
  const def = definitionOf(open(kind));
  if (def?.element) return [];
  return def?.valueType ? Object.create(null) : undefined;
}

/** The fields at the top of a schema of which something is known, by name. */
export function fieldsHaving<Fact extends keyof Facts>(schema: z.ZodType, fact: Fact): ReadonlyMap<string, NonNullable<Facts[Fact]>> {
  const shape = Object.entries(definitionOf(open(schema))?.shape ?? {});
  return new Map(
    shape.flatMap(([name, kind]) => {
      const known = factsOf(kind)[fact];
      return known === undefined ? [] : [[name, known]];
    }),
  );
}

/** The names of the fields of each group in a schema, at whatever depth. */
export function groupsOf(schema: z.ZodType): ReadonlySet<string>[] {
  const groups: ReadonlySet<string>[] = [];
  const look = (kind: Kind): void => {
    const def = definitionOf(open(kind));
    const shape = def?.shape ?? {};
    if (def?.shape) groups.push(new Set(Object.keys(shape)));
    for (const field of Object.values(shape)) look(field);
    if (def?.element ?? def?.valueType) look(def.element ?? def.valueType);
  };
  look(schema);
  return groups;
}

/** Every name that a field has anywhere in a schema, or such a field as is asked for. */
export function fieldNames(schema: z.ZodType, isMeant: (facts: Facts, kind: z.core.$ZodType) => boolean = () => true): ReadonlySet<string> {
  const names = new Set<string>();
  const look = (kind: Kind): void => {
    const def = definitionOf(open(kind));
    for (const [name, field] of Object.entries(def?.shape ?? {})) {
      if (isMeant(factsOf(field), field)) names.add(name);
      look(field);
    }
    if (def?.element ?? def?.valueType) look(def.element ?? def.valueType);
  };
  look(schema);
  return names;
}
