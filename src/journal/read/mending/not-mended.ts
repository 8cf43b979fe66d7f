/** What the parser says of a slip that nothing mends, in our words. */
import type { YAMLError } from 'yaml';
import { type Diagnostic, diagnostic } from '../../diagnostics/diagnostic.ts';
import type { Place } from '../../diagnostics/place.ts';

interface Complaint {
  readonly code: string;
  readonly said: string;
  /** The line that the parser stumbled on. */
  readonly line: string;
}

type Row = readonly [is: (complaint: Complaint) => boolean, code: 'A201' | 'A202' | 'A208', message: string, hint: string];

const QUOTE = 'Put the value in double quotes.';
const INDENTATION = ['BAD_INDENT', 'BLOCK_AS_IMPLICIT_KEY', 'MULTILINE_IMPLICIT_KEY', 'MISSING_CHAR'];

const ROWS: readonly Row[] = [
  [({ line }) => /^ *\t/.test(line), 'A202', 'A tab stands in the indentation.', 'Indent with spaces, two for each step.'],
  [({ code }) => code === 'BAD_SCALAR_START', 'A208', 'The value begins with a mark that YAML keeps for itself.', QUOTE],
  [({ code, line }) => /^BLOCK_/.test(code) && /:\s.*:(\s|$)/.test(line), 'A208', 'A second colon stands in this value.', QUOTE],
  [({ said }) => said.includes('at node end'), 'A208', 'Something follows where the value ends.', QUOTE],
  [
    ({ code }) => code === 'BAD_DQ_ESCAPE',
    'A208',
    'A backslash between double quotes means something to YAML.',
    'Write it twice, or put the value in single quotes.',
  ],
  [({ said }) => said.includes('quote'), 'A201', 'A quotation mark that was opened is not closed.', 'Close it on the same line.'],
  [
    ({ said }) => /flow (?:map|sequence|coll)/i.test(said),
    'A201',
    'A brace or bracket that was opened is not closed.',
    'Close every `{` with `}` and every `[` with `]`.',
  ],
  [
    ({ code }) => INDENTATION.includes(code),
    'A201',
    'The indentation is not what YAML expects here.',
    'Entries of one list begin in the same column; fields of one entry do too.',
  ],
];

/**
 * @param place of the complaint
 * @param text the YAML
 * @param at where in it the parser stumbled
 */
export function describeYamlError(place: Place, text: string, at: number, error: YAMLError): Diagnostic {
  const start = text.lastIndexOf('\n', at - 1) + 1;
  const complaint = { code: error.code, said: error.message, line: /^[^\r\n]*/.exec(text.slice(start))?.[0] ?? '' };
  const [, code, message, hint] = ROWS.find(([is]) => is(complaint)) ?? [];
  if (code && message) return diagnostic(code, place, message, { hint: hint ?? null });
  const said = error.message.replace(/\s+/g, ' ');
  const advice = 'Put text with marks in it in double quotes, and look for a brace or bracket too many or too few.';
  return diagnostic('A201', place, `This is not YAML: ${said.charAt(0).toLowerCase()}${said.slice(1)}.`, { hint: advice });
}

/** The parser has given up before, and says of each thing that follows that it did not expect it. */
export function isLost(message: string): boolean {
  return message.includes('in YAML stream');
}
