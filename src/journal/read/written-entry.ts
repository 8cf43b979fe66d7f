import type Fraction from 'fraction.js';
import type { Place } from '../diagnostics/place.ts';
import { keptIn } from '../values/once.ts';
import type { Path, Tree, Value } from './source/tree.ts';

/** An entry of a list: what it says, where, and whether that can be believed. */
export interface WrittenEntry<T> {
  readonly says: T;
  readonly place: Place;
  /** A fault is in a field that says what the entry means: it is looked through for what else is wrong, and not counted with. */
  readonly doubtful: boolean;
  /** Where a field of the entry, or what the field holds, is written. */
  placeOf(...path: Path): Place;
}

/** What a schema gives out, for reading only, with every group of fields in a list as an entry. */
export type Read<T> = T extends Fraction
  ? T
  : T extends readonly (infer Item)[]
    ? readonly ReadItem<Item>[]
    : T extends object
      ? { readonly [Name in keyof T]: Read<T[Name]> }
      : T;

type ReadItem<Item> = Item extends readonly unknown[] ? Read<Item> : Item extends object ? WrittenEntry<Read<Item>> : Item;

/**
 * @param value what a schema made of the tree
 * @param doubtful paths of entries with a fault in a decisive field; what such an entry lies in is in doubt with it
 */
export function withEntries<T>(value: T, tree: Tree, doubtful: readonly Path[]): Read<T> {
  const doubted = new Set(doubtful.flatMap((path) => path.map((_, n) => keyOf(path.slice(0, n + 1)))));
  const entry = (says: object, written: Value | undefined, path: Path): WrittenEntry<unknown> => ({
    says: read(says, written, path),
    place: tree.placeOf(path),
    doubtful: doubted.size > 0 && doubted.has(keyOf(path)),
    placeOf: (...more) => tree.placeOf([...path, ...more]),
  });
  const read = (at: unknown, written: Value | undefined, path: Path): unknown => {
    if (Array.isArray(at)) {
      const items = at as readonly unknown[];
      return items.map((item, n) => (isGroup(item) ? entry(item, heldBy(written, n), [...path, n]) : item));
    }
    if (!isGroup(at)) return at;
    return Object.fromEntries(
      Object.entries(at).map(([name, held]) => {
        const field = writtenName(name, written);
        return [name, typeof held === 'object' ? read(held, heldBy(written, field), [...path, field]) : held];
      }),
    );
  };
  return read(value, tree.value, []) as Read<T>;
}

const keyOf = (path: Path): string => path.map(String).join('\u0000');

/** Fields by their names, as against a list or an exact number. */
function isGroup(value: unknown): value is object {
  if (typeof value !== 'object' || value === null) return false;
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}

function heldBy(written: Value | undefined, step: string | number): Value | undefined {
  return typeof written === 'object' ? (written as Record<string | number, Value>)[step] : undefined;
}

/** `goesBack` is written `goes-back`; a name that stands in the file is as it stands there. */
function writtenName(name: string, written: Value | undefined): string {
  return heldBy(written, name) === undefined ? kebab(name) : name;
}

const kebabs = new Map<string, string>();
/** A schema has a few hundred names, and every entry has them. */
const kebab = (name: string): string => keptIn(kebabs, name, () => name.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`));
