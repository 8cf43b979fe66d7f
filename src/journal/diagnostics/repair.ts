/** Repairs that cannot be meant otherwise, so that they may be written without asking. */
import type { Place } from './place.ts';

/** What takes the place of the text at a place. */
export interface Repair {
  readonly place: Place;
  readonly text: string;
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
