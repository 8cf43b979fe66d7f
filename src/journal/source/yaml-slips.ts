/** What people type by mistake in YAML, and what to type instead. */
import type { YAMLError } from 'yaml';
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { SourceText } from './text.ts';

/**
 * Turns a parser's complaint into ours: the place, what was found, and what to type.
 *
 * @param base offset of the YAML in the file
 * @param text the YAML
 */
export function describeYamlError(source: SourceText, base: number, text: string, error: YAMLError): Diagnostic {
  const start = pastSpace(text, error.pos[0]);
  const end = error.pos[1];
  const place = source.place(base + start, base + Math.max(start + 1, end));
  const line = lineAround(text, start);
  const slip = SLIPS.find((each) => each.is(error.code, line, text.slice(start), error.message));
  if (slip) return diagnostic(slip.code, place, slip.message, { hint: slip.hint(line) });
  return diagnostic('A201', place, `This is not YAML: ${lowerFirst(error.message.replace(/\s+/g, ' '))}.`);
}

/** A complaint about the end of a line is about what stands on the next. */
function pastSpace(text: string, offset: number): number {
  const next = text.slice(offset).search(/\S/);
  return next === -1 ? offset : offset + next;
}

interface Slip {
  readonly code: 'A201' | 'A202' | 'A208';
  is(code: string, line: string, rest: string, message: string): boolean;
  readonly message: string;
  hint(line: string): string;
}

const RESERVED = /^[@`%|>!&*]/;

const SLIPS: readonly Slip[] = [
  {
    code: 'A202',
    is: (code, line) => code === 'TAB_AS_INDENT' || /^ *\t/.test(line),
    message: 'A tab stands in the indentation.',
    hint: () => 'Indent with spaces, two for each step.',
  },
  {
    code: 'A208',
    is: (code, _line, rest) => code === 'BAD_SCALAR_START' || (code === 'TAG_RESOLVE_FAILED' && RESERVED.test(rest)),
    message: 'The value begins with a mark that YAML keeps for itself.',
    hint: quoteHint,
  },
  {
    code: 'A208',
    is: (code, line) => code === 'UNEXPECTED_TOKEN' && /:\s+[|>]/.test(line),
    message: 'The value begins with `|` or `>`, which in YAML opens a block of text.',
    hint: quoteHint,
  },
  {
    code: 'A208',
    is: (code, line) => (code === 'BLOCK_IN_FLOW' || code === 'BLOCK_AS_IMPLICIT_KEY') && /:\s.*:(\s|$)/.test(line),
    message: 'A second colon stands in this value.',
    hint: quoteHint,
  },
  {
    code: 'A208',
    is: (code, _line, _rest, message) => code === 'UNEXPECTED_TOKEN' && message.includes('at node end'),
    message: 'Something follows where the value ends.',
    hint: () => 'If it belongs to the value, put the whole value in one pair of double quotes.',
  },
  {
    code: 'A201',
    is: (_code, _line, _rest, message) => /call stack/i.test(message),
    message: 'The YAML is nested too deeply to be read.',
    hint: () => 'An entry of a note is three or four levels deep.',
  },
  {
    code: 'A201',
    is: (code, _line, _rest, message) => code === 'MISSING_CHAR' && message.includes('quote'),
    message: 'A quotation mark that was opened is not closed.',
    hint: () => 'Close it on the same line.',
  },
  {
    code: 'A201',
    is: (_code, _line, _rest, message) => /Flow (map|sequence)/.test(message) || /expected flow/i.test(message),
    message: 'A brace or bracket that was opened is not closed.',
    hint: () => 'Close every `{` with `}` and every `[` with `]`.',
  },
  {
    code: 'A201',
    is: (code) => ['BAD_INDENT', 'BLOCK_AS_IMPLICIT_KEY', 'MULTILINE_IMPLICIT_KEY', 'MISSING_CHAR'].includes(code),
    message: 'The indentation is not what YAML expects here.',
    hint: () => 'Entries of one list begin in the same column; fields of one entry do too.',
  },
];

/** Stands for a colon while a text is parsed; as long as it is, so that offsets stay. A private character of Unicode. */
const COVER = '\uE000';

/**
 * Covers the colons after the first in a line where the parser stumbled over a second one.
 *
 * @returns the text and the complaint that is settled by it, or null when there is none
 */
export function coverSecondColon(text: string, errors: readonly YAMLError[]): { text: string; error: YAMLError } | null {
  for (const error of errors) {
    if (error.code !== 'BLOCK_AS_IMPLICIT_KEY') continue;
    const start = text.lastIndexOf('\n', pastSpace(text, error.pos[0]) - 1) + 1;
    const [head] = /^[ ]*(?:- )*[A-Za-z][\w-]*:[ ]+(?=[^\s"'{[])/.exec(text.slice(start)) ?? [];
    if (head === undefined) continue;
    const value = lineAround(text, start).slice(head.length);
    const covered = value.replaceAll(/:(?=\s|$)/g, COVER);
    if (covered !== value)
      return { text: text.slice(0, start + head.length) + covered + text.slice(start + head.length + value.length), error };
  }
  return null;
}

export function uncovered(text: string): string {
  return text.replaceAll(COVER, ':');
}

/** Shows the field of the line with its value quoted, when the line is a plain one. */
function quoteHint(line: string): string {
  const block = /^\s*(?:- )?([A-Za-z][\w-]*):\s+([^"{[].*?)\s*$/.exec(line);
  if (!block || line.includes('{')) return 'Put the value in double quotes.';
  return `Put the value in double quotes: \`${block[1]}: "${(block[2] ?? '').replaceAll('"', "'")}"\`.`;
}

function lineAround(text: string, offset: number): string {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  const end = text.indexOf('\n', offset);
  return text.slice(start, end === -1 ? text.length : end).replace(/\r$/, '');
}

function lowerFirst(text: string): string {
  return text.charAt(0).toLowerCase() + text.slice(1);
}
