/** What notes tell of parts beside the actions, and data as text, for tests. */
import Fraction from 'fraction.js';
import type { FilmClip, Measurement, Method, Picture } from '../../src/journal/model.ts';
import { readQuantity } from '../../src/journal/values/quantity.ts';
import { placeAt } from './journal.ts';

export function measured(id: string, what: string, value: string, fields: Partial<Measurement> = {}): Measurement {
  const read = readQuantity(value);
  if (!read.ok) throw new Error(read.problem);
  const blank = { as: null, low: null, high: null, limitsText: null, within: null, note: null } as const;
  return { part: id, what, value: read.value, ...blank, place: placeAt('sessions/note.md'), ...fields };
}

export function method(how: string, on: readonly string[], fields: Partial<Method> = {}): Method {
  return { how, on, with: [], material: null, result: null, note: null, place: placeAt('sessions/note.md'), ...fields };
}

export function picture(file: string, shows: readonly string[]): Picture {
  return { file, shows, named: [], points: [], view: null, caption: null, alt: null, inProse: false, unmentioned: false, place: null };
}

export function clip(name: string, marks: readonly (readonly [number, readonly string[]])[], title: string | null = null): FilmClip {
  const list = marks.map(([seconds, parts]) => ({ seconds, text: String(seconds), parts }));
  return { clip: name, file: name.startsWith('https:') ? null : name, title, marks: list, place: placeAt('sessions/note.md') };
}

/** Plain data as text: maps as lists, fractions as `n/d`. Two views are equal just when their texts are. */
export function asText(value: unknown): string {
  return JSON.stringify(value, (_, one) => {
    if (one instanceof Map) return [...one];
    return one instanceof Fraction ? one.toFraction() : one;
  });
}
