/** Whether two answers are the same: a digest of plain data, whatever it is made of. */
import { hash } from 'node:crypto';

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
const LARGE = 600;

function written(value: unknown): string {
  switch (typeof value) {
    case 'string':
      return told(value);
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

/** A text begins with its length, so that nothing in it can be taken for what comes after it. */
const told = (text: string): string => `"${text.length}:${text}`;

function writtenThing(thing: object): string {
  const before = known.get(thing);
  if (before !== undefined) return before;
  const text = pieces(thing);
  if (text.length <= LARGE) return text;
  const short = `#${hash('sha256', text, 'base64url')}`;
  known.set(thing, short);
  return short;
}

/** Without lists of texts between, which would be garbage at once. */
function pieces(thing: object): string {
  let text = '';
  if (Array.isArray(thing)) {
    for (const one of thing as readonly unknown[]) text += `${written(one)},`;
    return `[${text}]`;
  }
  if (thing instanceof Map) {
    for (const [key, value] of thing) text += `${written(key)}:${written(value)},`;
    return `map(${text})`;
  }
  if (thing instanceof Set) {
    for (const one of thing) text += `${written(one)},`;
    return `set(${text})`;
  }
  for (const name of Object.keys(thing)) text += `${told(name)}:${written((thing as Record<string, unknown>)[name])},`;
  return `{${text}}`;
}
