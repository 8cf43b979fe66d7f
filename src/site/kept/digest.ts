/** Whether two answers are the same: a digest of plain data, whatever it is made of. */
import { hash } from 'node:crypto';
import { keptIn } from '../../journal/values/once.ts';

/** Answers this short are their own digest. */
const SHORT = 43;

/**
 * @param value data: texts, numbers, lists, maps, sets and objects of such
 * @returns the same for the same data in the same order, and for no other
 * @throws TypeError for what is no data, such as a function
 */
export function digestOf(value: unknown): string {
  const text = written(value);
  return text.length <= SHORT ? text : hash('sha256', text, 'base64url');
}

/** What was written of large things that many answers hold: the sessions, parts and entries of a record, which never change. */
const known = new WeakMap<object, string>();
/** A thing that was written as more than this is worth remembering, by its digest. */
const LARGE = 200;

function written(value: unknown): string {
  switch (typeof value) {
    case 'string':
      return JSON.stringify(value);
    case 'number':
    case 'boolean':
    case 'undefined':
      return String(value);
    case 'bigint':
      return `${value}n`;
    case 'object':
      return value === null ? 'null' : writtenThing(value);
    default:
      throw new TypeError(`a ${typeof value} is no data`);
  }
}

function writtenThing(thing: object): string {
  const before = known.get(thing);
  if (before !== undefined) return before;
  const text = pieces(thing);
  if (text.length <= LARGE) return text;
  const short = `#${hash('sha256', text, 'base64url')}`;
  known.set(thing, short);
  return short;
}

function pieces(thing: object): string {
  if (Array.isArray(thing)) return `[${listed(thing)}]`;
  if (thing instanceof Map) return `map(${[...thing].map(([key, value]) => `${written(key)}:${written(value)}`).join()})`;
  if (thing instanceof Set) return `set(${[...thing].map(written).join()})`;
  let text = '';
  for (const [name, value] of Object.entries(thing))
    text += `${text === '' ? '' : ','}${keptIn(names, name, () => JSON.stringify(name))}:${written(value)}`;
  return `{${text}}`;
}

/** Without a list of texts between, which would be garbage at once. */
function listed(things: readonly unknown[]): string {
  let text = '';
  for (let n = 0; n < things.length; n += 1) text += n === 0 ? written(things[n]) : `,${written(things[n])}`;
  return text;
}

/** Fields are some hundreds, and are written a million times. */
const names = new Map<string, string>();
