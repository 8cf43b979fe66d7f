/** Values read from a file, and where each of them is written: what both readers of YAML make. */
import type { Place } from '../model.ts';
import type { SourceText } from './text.ts';

export type Value = string | Value[] | { [key: string]: Value };
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

/** Values with their places. */
export interface Tree {
  readonly value: Value;
  /** Where the value at a path is written; the nearest that contains it when it is not there. */
  placeOf(path: Path): Place;
  /** Where the key at the end of a path is written. */
  keyPlaceOf(path: Path): Place;
  /** Takes a value out, so that what is left can still be understood. */
  drop(path: Path): void;
  /** Puts a text where a field of the top is missing; it has no place of its own. */
  supply(field: string, text: string): void;
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
    supply: (field, text) => {
      if (typeof value === 'object' && !Array.isArray(value)) value[field] = text;
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

function drop(root: Value, rootSpot: Spot, path: Path): void {
  const last = path.at(-1);
  if (last === undefined) return;
  let at: Value | undefined = root;
  for (const step of path.slice(0, -1)) {
    if (typeof at !== 'object') return;
    at = Array.isArray(at) ? at[Number(step)] : at[String(step)];
  }
  const { spot, reached } = furthest(rootSpot, path.slice(0, -1));
  if (typeof at !== 'object' || !reached) return;
  if (Array.isArray(at)) {
    at.splice(Number(last), 1);
    if (Array.isArray(spot.inside)) spot.inside.splice(Number(last), 1);
  } else {
    delete at[String(last)];
  }
}
