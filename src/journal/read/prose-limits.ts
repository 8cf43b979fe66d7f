/**
 * What no evening writes and what would keep the parser of Markdown busy for minutes, or out of memory: much too long,
 * nested without end, or made of marks. Its time grows with the square of some of these; within the limits a
 * note is read in less than a second.
 */

import { holdsControls } from './source/text.ts';

/** A stretch of the prose, and what is too much of it. */
export interface TooMuch {
  readonly at: number;
  readonly message: string;
}

const MOST_CHARACTERS = 128 * 1024;
const MOST_LINES = 5000;
/** Quotations, lists and notes in one another, on one line. */
const MOST_NESTED = 32;
const MOST_ANGLES = 2000;
/** In one paragraph. */
const MOST_EMPHASIS = 2000;
/** In one line. */
const MOST_CELLS = 1000;

/** A mark that opens a block in a block. */
const OPENS = /[ \t]*(?:>|[-+*](?=[ \t])|\d{1,9}[.)](?=[ \t])|\[\^[^\]\s]*\]:)/y;

/** @returns the first thing that is too much, at its offset in the prose; null for prose that can be read */
export function tooMuchOf(prose: string): TooMuch | null {
  if (prose.length > MOST_CHARACTERS)
    return { at: 0, message: `The prose of this note has ${Math.round(prose.length / 1024)} kB; the limit is 128.` };
  let [lines, angles, emphasis] = [0, 0, 0];
  for (let at = 0; at < prose.length; ) {
    const end = endOfLine(prose, at);
    const line = prose.slice(at, end);
    lines += 1;
    angles += countOf(line, '<');
    emphasis = line.trim() === '' ? 0 : emphasis + countOf(line, '*') + countOf(line, '_') + countOf(line, '~');
    if (lines > MOST_LINES) return { at, message: `The prose of this note has more than ${MOST_LINES} lines.` };
    if (angles > MOST_ANGLES) return { at, message: `The prose of this note has more than ${MOST_ANGLES} angles (\`<\`).` };
    if (emphasis > MOST_EMPHASIS) return { at, message: `This paragraph has more than ${MOST_EMPHASIS} marks of emphasis.` };
    if (countOf(line, '|') > MOST_CELLS) return { at, message: `This line has more than ${MOST_CELLS} cells of a table.` };
    if (nestingOf(line) > MOST_NESTED) return { at, message: `This line is nested more than ${MOST_NESTED} deep.` };
    at = end + 1;
  }
  return null;
}

/** A character by its number, as HTML has it. */
const BY_NUMBER = /&#(?:[xX]([0-9a-fA-F]{1,6})|(\d{1,7}));/g;

/** @returns the first control character that the prose names by its number, at its offset; null where there is none */
export function controlByNumber(prose: string): { readonly at: number; readonly length: number; readonly code: number } | null {
  for (const { 0: written, 1: hex, 2: decimal, index } of prose.matchAll(BY_NUMBER)) {
    const code = hex === undefined ? Number(decimal) : Number.parseInt(hex, 16);
    if (code <= 0x10ffff && holdsControls(String.fromCodePoint(code))) return { at: index, length: written.length, code };
  }
  return null;
}

function endOfLine(text: string, from: number): number {
  const end = text.indexOf('\n', from);
  return end === -1 ? text.length : end;
}

function countOf(line: string, mark: string): number {
  let count = 0;
  for (let at = line.indexOf(mark); at !== -1; at = line.indexOf(mark, at + 1)) count += 1;
  return count;
}

function nestingOf(line: string): number {
  let depth = 0;
  OPENS.lastIndex = 0;
  while (depth <= MOST_NESTED && OPENS.test(line)) depth += 1;
  return depth;
}
