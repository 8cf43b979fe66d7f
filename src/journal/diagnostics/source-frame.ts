import type { Place } from './place.ts';

/** Lines shown before the one that is meant. */
const LINES_BEFORE = 1;
/** Longer lines are cut to a window around the place. */
const WIDEST = 110;

/** One line of a frame: its number as text ('' for the line of marks) and what stands beside it. */
export interface FrameLine {
  readonly gutter: string;
  readonly text: string;
  readonly kind: 'source' | 'marks';
}

/**
 * The lines of a source around a place, the place underlined on the line after it.
 *
 * A range over several lines is underlined to the end of its first. Tabs become single spaces and
 * control characters become visible, so that the marks stand under the right letters and a note cannot
 * steer a terminal.
 *
 * @param source the whole text of the file
 * @param place lines and columns from 1, columns in UTF-16 units as editors count them
 * @returns no lines at all when the source does not have that line, or is empty
 */
export function sourceFrame(source: string, place: Place): FrameLine[] {
  const lines = source.split(/\r\n|\n|\r/u);
  const line = lines[place.line - 1];
  if (line === undefined || source === '') return [];
  const first = Math.max(1, place.line - LINES_BEFORE);
  const start = place.column - 1;
  const end = place.endLine > place.line ? line.length : place.endColumn - 1;
  const from = windowStart(line.length, start);
  const frame: FrameLine[] = lines
    .slice(first - 1, place.line)
    .map((text, i) => ({ gutter: String(first + i), text: cut(text, from), kind: 'source' }));
  const before = visible(line.slice(from, Math.max(from, start)));
  const under = visible(line.slice(Math.max(from, start), Math.min(end, from + WIDEST)));
  const marks = '^'.repeat(Math.max(1, [...under].length));
  return [...frame, { gutter: '', text: ' '.repeat([...before].length + (from > 0 ? 1 : 0)) + marks, kind: 'marks' }];
}

/** Replaces what a terminal would act on by something that can be seen. */
export function visible(text: string): string {
  return text
    .replace(/\t/gu, ' ')
    .replace(/\p{Cc}/gu, picture)
    .replace(/[\u200e\u200f\u202a-\u202e\u2028\u2029\u2066-\u2069\ufeff]/gu, '\ufffd');
}

/** The Unicode picture of a C0 control character; U+FFFD for the others. */
function picture(control: string): string {
  const code = control.codePointAt(0) ?? 0;
  return code < 0x20 ? String.fromCodePoint(0x2400 + code) : '\ufffd';
}

function windowStart(length: number, start: number): number {
  if (length <= WIDEST || start < WIDEST - 20) return 0;
  return Math.max(0, Math.min(start - 30, length - WIDEST));
}

function cut(text: string, from: number): string {
  const shown = visible(text.slice(from, from + WIDEST));
  return (from > 0 ? '…' : '') + shown + (text.length > from + WIDEST ? '…' : '');
}
