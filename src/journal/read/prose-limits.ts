/**
 * What no evening writes and what would keep the parser of Markdown busy for minutes, or out of memory: much too long,
 * nested without end, or made of marks. Its time grows with the square of some of these; within the limits a
 * note is read in less than a second.
 */

import { tooFarFromBracket } from './open-brackets.ts';
import { holdsControls } from './source/text.ts';

/** A stretch of the prose, and what is too much of it. */
export interface TooMuch {
  readonly at: number;
  readonly message: string;
}

const MOST_CHARACTERS = 128 * 1024;

/** A mark that opens a block in a block. */
const OPENS = /[ \t]*(?:>|[-+*](?=[ \t])|\d{1,9}[.)](?=[ \t])|\[\^[^\]\s]*\]:)/y;
/** In one another, on one line. */
const MOST_NESTED = 32;

/** How many of something a line may have, or the lines of a paragraph or of a note together. */
interface Limit {
  readonly over: 'note' | 'paragraph' | 'line';
  readonly most: number;
  countIn(line: string): number;
  readonly what: string;
}

const LIMITS: readonly Limit[] = [
  { over: 'note', most: 5000, countIn: () => 1, what: 'lines' },
  { over: 'note', most: 2000, countIn: (line) => countOf(line, '<'), what: 'angles (`<`)' },
  // Each is sought to the end of the prose.
  { over: 'note', most: 200, countIn: (line) => countOf(line, '<!') + countOf(line, '<?'), what: 'comments of HTML' },
  { over: 'note', most: 3000, countIn: nestingOf, what: 'marks of lists and quotations' },
  { over: 'note', most: 20_000, countIn: emphasisIn, what: 'marks of emphasis' },
  { over: 'note', most: 4000, countIn: (line) => countOf(line, '['), what: 'opening brackets (`[`)' },
  // For each the parser goes through all that stands before it.
  { over: 'note', most: 500, countIn: (line) => (/^[\s>]*(?:=+|-+)\s*$/.test(line) ? 1 : 0), what: 'lines under a heading' },
  // One in another takes the parser longer with each that stands before it.
  { over: 'note', most: 200, countIn: (line) => countOf(line, ']:'), what: 'footnotes and addresses (`]:`)' },
  { over: 'paragraph', most: 1000, countIn: () => 1, what: 'lines without an empty one between them' },
  { over: 'paragraph', most: 2000, countIn: emphasisIn, what: 'marks of emphasis' },
  { over: 'paragraph', most: 2000, countIn: (line) => countOf(line, '['), what: 'opening brackets (`[`)' },
  // Each looks for the one that opens it, back to the beginning.
  { over: 'paragraph', most: 2000, countIn: (line) => countOf(line, ']'), what: 'closing brackets (`]`)' },
  { over: 'line', most: 1000, countIn: (line) => countOf(line, '|'), what: 'cells of a table' },
  { over: 'line', most: MOST_NESTED, countIn: nestingOf, what: 'lists and quotations in one another' },
  // The longest addresses of pages are shorter. Of Latin letters, figures and marks: some scripts have no blanks.
  { over: 'line', most: 2000, countIn: longestWordOf, what: 'characters without a blank' },
];
const WHERE = { note: 'The prose of this note', paragraph: 'This paragraph', line: 'This line' } as const;

/** @returns the first thing that is too much, at its offset in the prose; null for prose that can be read */
export function tooMuchOf(prose: string): TooMuch | null {
  if (prose.length > MOST_CHARACTERS)
    return { at: 0, message: `The prose of this note has ${Math.round(prose.length / 1024)} kB; the limit is 128.` };
  const counts = LIMITS.map(() => 0);
  for (let at = 0; at < prose.length; ) {
    const end = endOfLine(prose, at);
    const line = prose.slice(at, end);
    const blank = line.trim() === '';
    for (const [n, { over, most, countIn, what }] of LIMITS.entries()) {
      const before = over === 'line' || (over === 'paragraph' && blank) ? 0 : (counts[n] ?? 0);
      counts[n] = before + countIn(line);
      if (counts[n] > most) return { at, message: `${WHERE[over]} has more than ${most} ${what}.` };
    }
    at = end + 1;
  }
  return tooFarFromBracket(prose);
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

function emphasisIn(line: string): number {
  return ['*', '_', '~'].reduce((sum, mark) => sum + countOf(line, mark), 0);
}

function nestingOf(line: string): number {
  let depth = 0;
  OPENS.lastIndex = 0;
  while (depth <= MOST_NESTED && OPENS.test(line)) depth += 1;
  return depth;
}

function longestWordOf(line: string): number {
  let longest = 0;
  for (const [word] of line.matchAll(/[!-~]+/g)) longest = Math.max(longest, word.length);
  return longest;
}
