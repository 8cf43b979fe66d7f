/** What people type by mistake in YAML, and what to type instead. */
import type { YAMLError } from 'yaml';
import { type Diagnostic, diagnostic } from '../../diagnostics/diagnostic.ts';
import type { Place } from '../../diagnostics/place.ts';

/**
 * Turns a parser's complaint into ours: the place, what was found, and what to type.
 *
 * @param place of the complaint
 * @param text the YAML
 * @param at where in it the parser stumbled
 */
export function describeYamlError(place: Place, text: string, at: number, error: YAMLError): Diagnostic {
  const line = lineAround(text, at);
  const kind = KINDS.find((each) => each.is(error.code, line, text.slice(at), error.message));
  if (kind) return diagnostic(kind.code, place, kind.message, { hint: kind.hint(line) });
  return diagnostic('A201', place, `This is not YAML: ${lowerFirst(error.message.replace(/\s+/g, ' '))}.`);
}

/** The parser has given up before, and says of each thing that follows that it did not expect it. */
export function isLost(message: string): boolean {
  return message.includes('in YAML stream');
}

interface Kind {
  readonly code: 'A201' | 'A202' | 'A208';
  is(code: string, line: string, rest: string, message: string): boolean;
  readonly message: string;
  hint(line: string): string;
}

const RESERVED = /^[@`%|>!&*]/;

const KINDS: readonly Kind[] = [
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
    code: 'A201',
    is: (_code, _line, _rest, message) => isLost(message),
    message: 'From here on nothing can be made out.',
    hint: () => 'Look at the lines above: something in them is not closed, closed too often, or not indented.',
  },
  {
    code: 'A208',
    is: (code, _line, _rest, message) => code === 'UNEXPECTED_TOKEN' && message.includes('at node end'),
    message: 'Something follows where the value ends.',
    hint: () => 'If it belongs to the value, put the whole value in one pair of double quotes.',
  },
  {
    code: 'A208',
    is: (code) => code === 'BAD_DQ_ESCAPE',
    message: 'A backslash between double quotes means something to YAML.',
    hint: () => 'Write it twice, or put the value in single quotes.',
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
