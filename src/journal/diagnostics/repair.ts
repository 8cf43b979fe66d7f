/** Repairs that cannot be meant otherwise, so that they may be written without asking. */
import type { Place } from './place.ts';

/** What takes the place of the text at a place. */
export interface Repair {
  readonly place: Place;
  readonly text: string;
}

/** A repair that compiling found. */
export interface SureRepair extends Repair {
  /** Where the fault is told that it mends; null where what stands there is simply read as it was meant. */
  readonly told: Place | null;
}

/** Repairs of faults that are among those told. */
export function toldRepairs(repairs: readonly SureRepair[], told: readonly { readonly place: Place }[]): SureRepair[] {
  const spot = ({ file, line, column }: Place): string => `${line}:${column} ${file}`;
  const spots = new Set(told.map(({ place }) => spot(place)));
  return repairs.filter((repair) => repair.told !== null && spots.has(spot(repair.told)));
}

/**
 * Writes repairs into the text of their file. Every other letter stays, and so do ends of lines and a byte order mark.
 *
 * @param text the file as it lies on disk
 * @param repairs of this file; of two that overlap the first is written
 */
export function repaired(text: string, repairs: readonly Repair[]): string {
  const starts = [text.startsWith('\uFEFF') ? 1 : 0];
  for (const { index, 0: end } of text.matchAll(/\r\n|[\r\n]/g)) starts.push(index + end.length);
  const offset = (line: number, column: number): number => (starts[line - 1] ?? text.length) + column - 1;
  const edits = repairs.map(({ place, text: put }) => ({
    start: offset(place.line, place.column),
    end: offset(place.endLine, place.endColumn),
    put,
  }));
  let written = '';
  let at = 0;
  for (const { start, end, put } of edits.sort((a, b) => a.start - b.start || a.end - b.end)) {
    if (start < at) continue;
    written += text.slice(at, start) + put;
    at = end;
  }
  return written + text.slice(at);
}
