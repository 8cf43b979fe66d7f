/**
 * What the format would have written otherwise, and what can be meant in one way only, is read as it was meant: a name
 * of a field in capitals, one entry that is in no list, an entry of which only the chief thing is written, one that
 * names several parts, a text in braces that goes on after a comma and has a colon.
 */
import type * as z from 'zod';
import { nearest } from '../diagnostics/nearest.ts';
import type { SureRepair } from '../diagnostics/repair.ts';
import { factsAt, fieldsAt, isListOfGroups } from './schema-at.ts';
import type { Path, Tree, Value, Written } from './source/tree.ts';

/**
 * @param repairs gets the names of fields that the format writes otherwise
 * @returns whether anything is read otherwise than it stands there
 */
export function asMeant(tree: Tree, schema: z.ZodType, repairs: SureRepair[]): boolean {
  return groupAsMeant(tree, schema, [], tree.value, repairs);
}

function groupAsMeant(tree: Tree, schema: z.ZodType, path: Path, group: Value, repairs: SureRepair[]): boolean {
  if (typeof group !== 'object') return false;
  if (Array.isArray(group)) return group.map((item, n) => groupAsMeant(tree, schema, [...path, n], item, repairs)).some(Boolean);
  const known = fieldsAt(schema, path);
  const renamed = Object.keys(group).map((name) => {
    const meant = meantName(name, group, known);
    if (meant === null) return false;
    repairs.push({ place: tree.keyPlaceOf([...path, name]), text: meant, told: null });
    tree.rename([...path, name], meant);
    return true;
  });
  const joined = Object.keys(group).map((name) => goesOn(tree, schema, path, name, known));
  const inside = Object.keys(group).map((name) => {
    const field = [...path, name];
    const listed = isListOfGroups(schema, field) && listAsMeant(tree, schema, field, group[name]);
    const whole = nameAsMeant(tree, schema, field, group[name]);
    return groupAsMeant(tree, schema, field, group[name] ?? '', repairs) || listed || whole;
  });
  return [...renamed, ...joined, ...inside].some(Boolean);
}

/** `Date`, `goes_back` and `Goes back` can only be meant as the fields whose letters they have. */
function meantName(name: string, group: { [key: string]: Value }, known: readonly string[]): string | null {
  const meant = name.toLowerCase().replaceAll(/[\s_]+/g, '-');
  return !known.includes(name) && known.includes(meant) && group[meant] === undefined ? meant : null;
}

/** `note: Soft, spokes tight: out of true` in braces is one text: no field has a name of words that are no field's. */
function goesOn(tree: Tree, schema: z.ZodType, path: Path, name: string, known: readonly string[]): boolean {
  if (known.length === 0 || !/\s/.test(name) || known.includes(name) || nearest(name, known) !== null) return false;
  const before = tree.before([...path, name]);
  if (before === null || factsAt(schema, [...path, before.name]).prose !== true) return false;
  tree.join([...path, name]);
  return true;
}

/** `wheels: Wheels and axles` under `subsystems` is one of which only the name is said. */
function nameAsMeant(tree: Tree, schema: z.ZodType, path: Path, value: Value | undefined): boolean {
  const { alone } = factsAt(schema, path);
  if (typeof value !== 'string' || alone === undefined || isListOfGroups(schema, path)) return false;
  tree.reshape(path, (written) => withAlone(written, alone));
  return true;
}

function listAsMeant(tree: Tree, schema: z.ZodType, path: Path, value: Value | undefined): boolean {
  const { alone } = factsAt(schema, [...path, 0]);
  const several = fieldsAt(schema, [...path, 0]).find((name) => factsAt(schema, [...path, 0, name]).several === true);
  const isMeant = (item: Value): boolean =>
    (typeof item === 'string' && alone !== undefined) || (isGroup(item) && several !== undefined && Array.isArray(item[several]));
  if (value === undefined || (typeof value === 'string' && alone === undefined)) return false;
  if (Array.isArray(value) && !value.some(isMeant)) return false;
  tree.reshape(path, (written) => {
    const items = itemsOf(written).map((item) => (alone === undefined ? item : withAlone(item, alone)));
    return listed(written, several === undefined ? items : items.flatMap((item) => oneForEach(item, several)));
  });
  return true;
}

function isGroup(value: Value): value is { [key: string]: Value } {
  return typeof value === 'object' && !Array.isArray(value);
}

/** What stands in a list; what stands alone is a list of one. */
function itemsOf({ value, spot }: Written): Written[] {
  if (!Array.isArray(value) || !Array.isArray(spot.inside)) return [{ value, spot }];
  const { inside } = spot;
  return value.map((item, n) => ({ value: item, spot: inside[n] ?? spot }));
}

function listed({ spot }: Written, items: readonly Written[]): Written {
  return { value: items.map(({ value }) => value), spot: { ...spot, inside: items.map((item) => item.spot) } };
}

/** `2h` under `hours` is an entry of which only the time is said. */
function withAlone({ value, spot }: Written, alone: string): Written {
  if (typeof value !== 'string') return { value, spot };
  return { value: groupOf([[alone, value]]), spot: { ...spot, inside: new Map([[alone, { ...spot, key: null }]]) } };
}

/** `{ part: [a, b], did: cleaned }` says the same of each. */
function oneForEach({ value, spot }: Written, several: string): Written[] {
  if (!isGroup(value) || !Array.isArray(value[several]) || !(spot.inside instanceof Map)) return [{ value, spot }];
  const { inside } = spot;
  const named = inside.get(several);
  if (!named) return [{ value, spot }];
  return itemsOf({ value: value[several], spot: named }).map((one) => ({
    value: groupOf([...Object.entries(value).filter(([name]) => name !== several), [several, one.value]]),
    spot: { ...spot, inside: new Map([...inside, [several, { ...one.spot, key: named.key }]]) },
  }));
}

/** Fields by name, without a prototype, as the readers of YAML make them. */
function groupOf(fields: readonly (readonly [string, Value])[]): Value {
  return Object.assign(Object.create(null), Object.fromEntries(fields));
}
