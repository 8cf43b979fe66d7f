/** The whole record as one JSON document that describes itself, and the schema of it (JSON Schema 2020-12). Pure. */
import type { JournalRecord } from '../journal/record.ts';
import { registerAt } from '../journal/registers/register.ts';
import { whereaboutsAt } from '../journal/registers/stays.ts';
import { fieldsOf } from './left-out-fields.ts';

export type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json };

/** What each part of the document holds, in the words that its schema gives. */
const HOLDS: Readonly<Record<string, string>> = {
  format: 'The name of this format, and its edition.',
  day: 'The day on which the record stands: ISO 8601.',
  copy: 'Which copy of the record this is, and the kinds of matter that are left out of it.',
  settings: 'The vehicle, and what else journal.yaml says.',
  people: 'Who worked.',
  subsystems: 'Groups of positions.',
  milestones: 'Named points, in their order.',
  stores: 'Places where things lie.',
  consumables: 'What is used up.',
  threads: 'Stories through many sessions, by the parts that they are about.',
  positions: 'Places on the vehicle. Each takes as many as its count.',
  parts: 'Physical things, or lots of identical ones.',
  sessions: 'Notes, one for each sitting of work, in the order in which they happened. `body` is the prose, in Markdown (CommonMark).',
  stays: 'Where each part has been: so many of it at one place from one moment to the next; `to` is null where they still are.',
  deeds: 'Each action that took effect.',
  whereabouts: 'Where each part is on the day of the record.',
  register: 'For each position what was decided, what stands there, and what came of it, on the day of the record.',
  items: 'Open items, temporary measures among them, with when each was opened, put off and closed.',
  statements: 'What was sent to the client, as it was sent: each line with the id of the entry that it charged.',
  entries: 'The ledger: one line for each piece of work and each thing that was bought or used up. Every total is a sum of these.',
};

/** The same of fields within them, wherever they stand: a document without them needs no words for them. */
const FIELDS: Readonly<Record<string, string>> = {
  currency: 'ISO 4217. Amounts of money are whole minor units of it.',
  perHour: 'Minor units an hour.',
  budgetMinutes: 'The budget of hours, in minutes.',
};

/** Whether a field is left out: a drawing is a file of its own, and what the notes say stands with the sessions. The id of an entry is no such thing. */
function isLeft(name: string, held: unknown): boolean {
  return held === undefined || name === 'svg' || (name === 'entry' && typeof held === 'object') || name === 'filling';
}

/** The record as plain data, without the fields of what the copy leaves out. Exact numbers are fractions in text (`5/16`), dates are ISO 8601, a place in a note is `file:line`. */
export function recordJson(record: JournalRecord): { readonly [name: string]: Json } {
  const { journal, history, ledger } = record;
  const { sessions, settings, people, subsystems, milestones, stores, consumables, threads, positions, parts } = journal;
  const whole = {
    $schema: 'record.schema.json',
    format: 'asfound record, edition 1',
    day: record.day,
    copy: record.copy,
    ...{ settings, people, subsystems, milestones, stores, consumables, threads, positions, parts, sessions },
    stays: [...history.stays.values()].flat(),
    deeds: history.deeds,
    whereabouts: [...parts.keys()].flatMap((part) => whereaboutsAt(record, part, record.day).map((at) => ({ part, ...at }))),
    register: registerAt(record, null),
    items: history.items,
    statements: journal.statements,
    entries: ledger.entries,
  };
  return plain(whole, fieldsOf(record)) as { [name: string]: Json };
}

function plain(value: unknown, has: ReturnType<typeof fieldsOf>, within = ''): Json {
  if (value === null || value === undefined) return null;
  if (typeof value === 'string' || typeof value === 'boolean') return value;
  if (typeof value === 'number') return Number.isFinite(value) ? value : String(value);
  if (value instanceof Map) return [...value.values()].map((held) => plain(held, has, within));
  if (value instanceof Set) return [...value].map((held) => plain(held, has, within));
  if (Array.isArray(value)) return value.map((held) => plain(held, has, within));
  if (typeof value !== 'object') return String(value);
  if (isFraction(value)) return value.toFraction();
  if (isPlace(value)) return `${value.file}:${value.line}`;
  return Object.fromEntries(
    Object.entries(value).flatMap(([name, held]) => (isLeft(name, held) || !has(name, within) ? [] : [[name, plain(held, has, name)]])),
  );
}

function isFraction(value: object): value is { toFraction(): string } {
  return typeof (value as { toFraction?: unknown }).toFraction === 'function';
}

function isPlace(value: object): value is { file: string; line: number } {
  return 'endColumn' in value && 'line' in value;
}

/** A schema as it grows with each value that it must take. */
interface Shape {
  readonly types: Set<string>;
  readonly fields: Map<string, Shape>;
  /** Fields that every object had so far; null before the first. */
  always: Set<string> | null;
  items: Shape | null;
}

const shape = (): Shape => ({ types: new Set(), fields: new Map(), always: null, items: null });

/**
 * The schema of a document: what it holds, as it is, every field named and no other allowed. It describes this very
 * document, so that a program of another time can read it without this one.
 */
export function schemaOf(document: { readonly [name: string]: Json }, title: string): { readonly [name: string]: Json } {
  const whole = shape();
  learn(whole, document);
  const { properties, ...rest } = written(whole) as { properties: { [name: string]: { [name: string]: Json } }; [name: string]: Json };
  const top = Object.entries(properties).map(([name, field]) => [name, described(name, HOLDS, field)]);
  return { $schema: 'https://json-schema.org/draft/2020-12/schema', title, ...rest, properties: Object.fromEntries(top) };
}

function described(name: string, words: Readonly<Record<string, string>>, field: { [name: string]: Json }): { [name: string]: Json } {
  const description = Object.hasOwn(words, name) ? words[name] : undefined;
  return description === undefined ? field : { description, ...field };
}

function learn(into: Shape, value: Json): void {
  into.types.add(typeOf(value));
  if (Array.isArray(value)) {
    into.items ??= shape();
    for (const item of value) learn(into.items, item);
  } else if (typeof value === 'object' && value !== null) {
    const names = Object.keys(value);
    into.always = new Set(into.always === null ? names : names.filter((name) => into.always?.has(name)));
    for (const [name, held] of Object.entries(value)) {
      const field = into.fields.get(name) ?? shape();
      into.fields.set(name, field);
      learn(field, held);
    }
  }
}

function typeOf(value: Json): string {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'array';
  return typeof value === 'number' && Number.isInteger(value) ? 'integer' : typeof value;
}

function written({ types, fields, always, items }: Shape): { [name: string]: Json } {
  const names = types.has('number') ? [...types].filter((type) => type !== 'integer') : [...types];
  return {
    type: names.length === 1 ? (names[0] ?? 'null') : names.sort(),
    ...(types.has('array') && items !== null && items.types.size > 0 ? { items: written(items) } : {}),
    ...(types.has('object')
      ? {
          properties: Object.fromEntries([...fields].map(([name, field]) => [name, described(name, FIELDS, written(field))])),
          required: [...(always ?? [])].sort(),
          additionalProperties: false,
        }
      : {}),
  };
}
