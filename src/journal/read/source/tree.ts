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
  /** Puts a value where a field is missing or at fault; its place is that of the field, or of what lacks it. @returns whether it could */
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
    supply: (path, put) => {
      const held = heldAt(value, path.slice(0, -1));
      if (typeof held !== 'object' || Array.isArray(held)) return false;
      held[String(path.at(-1))] = put;
      return true;
    },
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
