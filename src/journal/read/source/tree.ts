/** Values read from a file, and where each of them is written: what both readers of YAML make. */
import type { Place } from '../../diagnostics/place.ts';
import type { SourceText } from './text.ts';

export type Value = string | Value[] | { [key: string]: Value };
/** Lists and groups in one another; the format has less than ten. What goes deeper would take the stack of whoever reads it. */
export const MOST_NESTED = 64;

export type Path = readonly PropertyKey[];

/** Offsets within the file's text, the end exclusive. */
export type Span = readonly [start: number, end: number];

/** Where a value is written, and where what it holds is: a value's spots have its form. */
export interface Spot {
  readonly start: number;
  readonly end: number;
  /** Where the name of the field is written whose value this is. */
  readonly key: Span | null;
  readonly inside: Map<string, Spot> | Spot[] | null;
}

/** A value, and where it and all that it holds are written. */
export interface Written {
  readonly value: Value;
  readonly spot: Spot;
}

/** Values with their places. */
export interface Tree {
  readonly value: Value;
  /** Where the value at a path is written; the nearest that contains it when it is not there. */
  placeOf(path: Path): Place;
  /** Where the key at the end of a path is written. */
  keyPlaceOf(path: Path): Place;
  /** Takes a value out, so that what is left can still be understood. */
  drop(path: Path): void;
  /** Gives a field another name. */
  rename(path: Path, name: string): void;
  /** Reads what stands at a field in another way. */
  reshape(path: Path, shape: (written: Written) => Written): void;
  /** What a field goes on from within the same braces; null where nothing is written before it there, or either is no plain text. */
  before(path: Path): { readonly name: string; readonly text: string } | null;
  /** Reads the text of the field before and all up to the end of this one as that of the field before. @see before */
  join(path: Path): void;
  /** Puts a value where a field is missing, or a field or an item of a list is at fault; its place is that of the field, or of what lacks it. @returns whether it could */
  supply(path: Path, value: Value): boolean;
}

/** @param root where the value and all that it holds are written */
export function treeOf(source: SourceText, value: Value, root: Spot): Tree {
  const place = (start: number, end: number): Place => source.place(start, start + source.text.slice(start, end).trimEnd().length);
  return {
    value,
    placeOf: (path) => {
      const { spot, reached } = furthest(root, path);
      const known = reached || spot.inside === null;
      return place(spot.start, known ? spot.end : endOfHead(spot, source.text));
    },
    keyPlaceOf: (path) => {
      const { spot, reached } = furthest(root, path);
      return reached && spot.key ? place(...spot.key) : place(spot.start, spot.end);
    },
    drop: (path) => drop(value, root, path),
    rename: (path, name) => rename(value, root, path, name),
    reshape: (path, shape) => {
      const held = heldAt(value, path.slice(0, -1));
      const { spot, reached } = furthest(root, path.slice(0, -1));
      const name = String(path.at(-1));
      if (typeof held !== 'object' || Array.isArray(held) || !reached || !(spot.inside instanceof Map)) return;
      const [written, inside] = [held[name], spot.inside.get(name)];
      if (written === undefined || !inside) return;
      const shaped = shape({ value: written, spot: inside });
      held[name] = shaped.value;
      spot.inside.set(name, shaped.spot);
    },
    before: (path) => runOn(source.text, value, root, path),
    join: (path) => {
      const run = runOn(source.text, value, root, path);
      const held = heldAt(value, path.slice(0, -1));
      if (run === null || typeof held !== 'object' || Array.isArray(held)) return;
      held[run.name] = run.text;
      delete held[run.key];
      run.fields.set(run.name, { ...run.first, end: run.last.end });
      run.fields.delete(run.key);
    },
    supply: (path, put) => {
      const held = heldAt(value, path.slice(0, -1));
      if (typeof held !== 'object') return false;
      if (Array.isArray(held)) held[Number(path.at(-1))] = put;
      else held[String(path.at(-1))] = put;
      return true;
    },
  };
}

/** A field and the one before it in braces, both plain texts with a comma between them. */
function runOn(source: string, root: Value, rootSpot: Spot, path: Path) {
  const key = String(path.at(-1));
  const held = heldAt(root, path.slice(0, -1));
  const { spot, reached } = furthest(rootSpot, path.slice(0, -1));
  if (typeof held !== 'object' || !reached || !(spot.inside instanceof Map)) return null;
  const fields = spot.inside;
  const names = [...fields.keys()].sort((a, b) => (fields.get(a)?.start ?? 0) - (fields.get(b)?.start ?? 0));
  const name = names[names.indexOf(key) - 1] ?? '';
  const [first, last] = [fields.get(name), fields.get(key)];
  if (!first || !last?.key || source[spot.start] !== '{' || !/^\s*,\s*$/.test(source.slice(first.end, last.key[0]))) return null;
  if ([first, last].some(({ start, inside }) => inside !== null || /["'{[|>]/.test(source[start] ?? ''))) return null;
  return {
    key,
    name,
    fields,
    first,
    last,
    text: source
      .slice(first.start, last.end)
      .trim()
      .replaceAll(/\s*\n\s*/g, ' '),
  };
}

/** The spot at a path, or the last on the way to it. */
function furthest(root: Spot, path: Path): { spot: Spot; reached: boolean } {
  let spot = root;
  for (const step of path) {
    const next: Spot | undefined = Array.isArray(spot.inside) ? spot.inside[Number(step)] : spot.inside?.get(String(step));
    if (!next) return { spot, reached: false };
    spot = next;
  }
  return { spot, reached: true };
}

/** Where a field is missing, the entry it is missing from is shown by its first line. */
function endOfHead({ start, end }: Spot, text: string): number {
  const newline = text.indexOf('\n', start);
  return newline === -1 ? end : Math.min(end, newline);
}

function heldAt(root: Value, path: Path): Value | undefined {
  let at: Value | undefined = root;
  for (const step of path) {
    if (typeof at !== 'object') return undefined;
    at = Array.isArray(at) ? at[Number(step)] : at[String(step)];
  }
  return at;
}

function rename(root: Value, rootSpot: Spot, path: Path, name: string): void {
  const key = String(path.at(-1));
  const at = heldAt(root, path.slice(0, -1));
  const { spot, reached } = furthest(rootSpot, path.slice(0, -1));
  if (typeof at !== 'object' || Array.isArray(at) || !reached || !(spot.inside instanceof Map)) return;
  const [value, inside] = [at[key], spot.inside.get(key)];
  delete at[key];
  spot.inside.delete(key);
  if (value === undefined || inside === undefined) return;
  at[name] = value;
  spot.inside.set(name, inside);
}

function drop(root: Value, rootSpot: Spot, path: Path): void {
  const last = path.at(-1);
  if (last === undefined) return;
  const at = heldAt(root, path.slice(0, -1));
  const { spot, reached } = furthest(rootSpot, path.slice(0, -1));
  if (typeof at !== 'object' || !reached) return;
  if (Array.isArray(at)) {
    at.splice(Number(last), 1);
    if (Array.isArray(spot.inside)) spot.inside.splice(Number(last), 1);
  } else {
    delete at[String(last)];
  }
}
