/** Names in the YAML of a file, found by what its schema says that its fields name. */
import type * as z from 'zod';
import type { Sort } from '../diagnostics/diagnostic.ts';
import type { Place } from '../diagnostics/place.ts';
import { isByName, isList, type Kind, kindWithin } from '../read/schema-at.ts';
import type { SourceText } from '../read/source/text.ts';
import type { Path, Tree, Value } from '../read/source/tree.ts';
import { factsOf, type Naming } from '../schema/facts.ts';
import { destinationOf } from '../schema/fields.ts';
import { withoutPrintedMarks } from '../values/as-typed.ts';
import { type Around, namedSort, type WrittenName } from './written-name.ts';

type Group = { readonly [name: string]: Value };

/** What is known of a value from where it stands. */
interface Standing {
  readonly kind: Kind;
  readonly path: Path;
  /** The group that it is a field of, as written. */
  readonly entry: Group;
  /** What the list or the group by name brings that it stands in. */
  readonly brings: Sort | null;
  /** It stands in that list itself, not in a field of an entry. */
  readonly alone: boolean;
}

/** @param tree as it is written: what a schema would drop still names something */
export function namesInYaml(tree: Tree, schema: z.ZodType, source: SourceText): WrittenName[] {
  const found: WrittenName[] = [];
  const take = (written: string, place: Place, sorts: readonly Sort[], brings: boolean): void => {
    const name = spotted(written, place, sorts, source);
    if (name !== null) found.push({ ...name, brings });
  };
  const text = (written: string, { kind, path, entry, brings, alone }: Standing): void => {
    const { names, elsewhere = false } = factsOf(kind);
    const sorts = names === undefined ? (alone && brings !== null ? [brings] : []) : sortsOf(names, entry);
    if (sorts.length > 0) take(written, tree.placeOf(path), sorts, brings !== null && !elsewhere && sorts.includes(brings));
  };
  const group = (held: Group, { kind, path, brings }: Standing): void => {
    const byName = isByName(kind);
    const { brings: own = null, keys = [] } = factsOf(kind);
    const sorts = !byName ? [] : own === null ? keys : [own];
    for (const [name, value] of Object.entries(held)) {
      const at = [...path, name];
      if (sorts.length > 0) take(name, tree.keyPlaceOf(at), sorts, own !== null);
      look(value, { kind: kindWithin(kind, name), path: at, entry: held, brings: byName ? null : brings, alone: false });
    }
  };
  const look = (value: Value, at: Standing): void => {
    const { brings = null } = factsOf(at.kind);
    const item = { ...at, kind: kindWithin(at.kind, 0), brings: brings ?? at.brings, alone: brings !== null };
    if (Array.isArray(value)) for (const [n, one] of value.entries()) look(one, { ...item, path: [...at.path, n] });
    else if (typeof value !== 'string') group(value, at);
    else text(value, isList(at.kind) ? item : at);
  };
  look(tree.value, { kind: schema, path: [], entry: {}, brings: null, alone: false });
  return found;
}

function sortsOf(naming: Naming, entry: Group): readonly Sort[] {
  return typeof naming === 'function' ? naming(entry) : naming;
}

/** Where in its place a name stands: without marks, and of a bag only the number. Null where nothing is named, or what is written says it otherwise. */
function spotted(written: string, place: Place, among: readonly Sort[], source: SourceText): Omit<WrittenName, 'brings'> | null {
  const meant = withoutPrintedMarks(written);
  const bag = among.includes('bag') ? bagIn(meant) : null;
  const sorts = [...new Set(bag === null ? among.filter((sort) => sort !== 'bag').map(namedSort) : (['bag'] as const))];
  const text = bag ?? meant;
  const start = source.offset(place.line, place.column);
  const raw = source.text.slice(start, source.offset(place.endLine, place.endColumn));
  const at = raw.indexOf(text);
  if (sorts.length === 0 || text === '' || at === -1) return null;
  const name = bag === null ? text : bag.replace(/^0+(?=\d)/, '');
  return { sorts, name, place: source.place(start + at, start + at + text.length), around: aroundIn(raw) };
}

/** `bag 14`, or where nothing but a bag is named its number alone. */
function bagIn(text: string): string | null {
  if (destinationOf(text).bag === null && !/^\d+$/.test(text)) return null;
  return /\d+/.exec(text)?.[0] ?? null;
}

function aroundIn(raw: string): Around {
  return raw.startsWith("'") ? 'single quotes' : raw.startsWith('"') ? 'double quotes' : 'nothing';
}
