import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { consumableSchema, partSchema } from '../../src/journal/schema/catalogues.ts';
import { identitySchema } from '../../src/journal/schema/identity.ts';
import { journalSchema } from '../../src/journal/schema/journal.ts';
import { sessionSchema } from '../../src/journal/schema/session.ts';
import { PACKS } from '../../src/journal/values/units.ts';
import { usesIn } from './field-uses.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

const WRAPPED = ['innerType', 'element', 'in', 'out', 'valueType'] as const;

/** The fields of a group, below whatever wraps it: a list, a default, a value that may be left out. */
function fieldsOf(schema: unknown): Readonly<Record<string, unknown>> {
  const { shape, def = {} } = schema as { shape?: Record<string, unknown>; def?: Record<string, unknown> };
  if (shape) return shape;
  const inside = WRAPPED.flatMap((name) => (def[name] ? [fieldsOf(def[name])] : []));
  return inside.find((fields) => Object.keys(fields).length > 0) ?? {};
}

/** The name of a field in the model: `goesBack` for `goes-back`. */
const inModel = (name: string): string => name.replaceAll(/-(\w)/g, (_, letter: string) => letter.toUpperCase());

const session = fieldsOf(sessionSchema);
const journal = fieldsOf(journalSchema);
const identity = fieldsOf(identitySchema);

/** Each group of fields, and the type of the model that it becomes. */
const GROUPS: readonly (readonly [where: string, type: string, fields: Readonly<Record<string, unknown>>])[] = [
  ['a note', 'Session', session],
  ['hours', 'WorkedTime', fieldsOf(session.hours)],
  ['parts', 'PartEntry', fieldsOf(session.parts)],
  ['decisions', 'Decision', fieldsOf(session.decisions)],
  ['attributed', 'Attribution', fieldsOf(session.attributed)],
  ['methods', 'Method', fieldsOf(session.methods)],
  ['measured', 'Measurement', fieldsOf(session.measured)],
  ['bought', 'BillLine', fieldsOf(session.bought)],
  ['bills', 'Bill', fieldsOf(session.bills)],
  ['lines of bills', 'BillLine', fieldsOf(fieldsOf(session.bills).lines)],
  ['sold', 'Sale', fieldsOf(session.sold)],
  ['used', 'Use', fieldsOf(session.used)],
  ['counted', 'StockTake', fieldsOf(session.counted)],
  ['bags', 'BagFilling', fieldsOf(session.bags)],
  ['opens', 'ItemOpening', fieldsOf(session.opens)],
  ['handed-over', 'HandedOver', fieldsOf(session['handed-over'])],
  ['pictures', 'Picture', fieldsOf(session.pictures)],
  ['film', 'FilmClip', fieldsOf(session.film)],
  ['papers', 'Paper', fieldsOf(session.papers)],
  ['a part', 'Part', fieldsOf(partSchema)],
  ['a consumable', 'Consumable', fieldsOf(consumableSchema)],
  ['journal.yaml', 'Settings', journal],
  ['vehicle', 'Vehicle', fieldsOf(journal.vehicle)],
  ['people', 'Person', fieldsOf(journal.people)],
  ['subsystems', 'Subsystem', fieldsOf(journal.subsystems)],
  ['an identity table', 'IdentityTable', identity],
  ['lines of an identity table', 'IdentityLine', fieldsOf(identity.lines)],
];

/** What a part says of its position, and is read there. */
const OF_POSITION: Readonly<Record<string, string>> = { 'Part.weight': 'Position.weight' };

/** Fields of one kind with names from a list, which the compiler goes through. */
const LISTED: readonly string[] = PACKS;

describe('what the format takes is read by something: a page, a file, a check or a sum', () => {
  const uses = usesIn(ROOT, ['Position', ...new Set(GROUPS.map(([, type]) => type))]);

  test.each(GROUPS)('%s', (_, type, fields) => {
    const names = Object.keys(fields).map(inModel);
    expect(names.length).toBeGreaterThan(1);
    const properties = uses.properties.get(type);
    expect(properties, type).toBeDefined();
    const unread = names.filter((name) => {
      if (!properties?.has(name)) return !uses.compiled.has(name) && !LISTED.includes(name);
      const use = `${type}.${name}`;
      return !uses.read.has(OF_POSITION[use] ?? use);
    });
    expect(unread).toEqual([]);
  });
});
