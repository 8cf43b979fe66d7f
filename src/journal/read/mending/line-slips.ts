/** Slips in how a line of a note's fields or of a catalogue begins, and in the value that stands on it. */
import { braceSlips } from './brace-slips.ts';
import type { Edit } from './mended-text.ts';
import { type FieldNames, type Groups, maskQuotations, type Row, type Slip, slipsByTable } from './slip.ts';
import { valueSlip } from './value-slips.ts';

/** A line of a text: the end does not count its line end. */
export interface Line {
  readonly start: number;
  readonly end: number;
}

/** What nobody types by hand is not looked into. */
const LONGEST = 2000;

const BULLET = 'An entry of a list begins with a hyphen and a space: `- `.';
const COLON = 'After the name of a field stand a colon and a space.';
const NO_COLON = 'A colon is missing: every field is `name: value`.';
const NAMED = ({ name, value }: Groups): string => `Write \`${name}: ${value}\`.`;
const SPACES = ({ shown = '' }: Groups): string => shown.replaceAll('\t', '  ').replaceAll(/[^ ]/g, ' ');

/** The likeliest first. A pattern begins where the line does, and may look on to the next. */
const ON_A_LINE: readonly Row[] = [
  {
    code: 'A202',
    typed: /^(?<shown> *\t\s*)(?=\S)/u,
    message: 'A tab stands in the indentation.',
    hint: 'Indent with spaces, two for each step.',
    meant: { shown: SPACES },
    sure: true,
  },
  {
    typed: /^(?<shown> *[^\S\t\r\n ]\s*)(?=\S)/u,
    message: 'A space that is none to YAML stands in the indentation.',
    hint: 'Indent with spaces, two for each step.',
    meant: { shown: SPACES },
    sure: true,
  },
  {
    typed: /^(?<shown>\.\.\.)EOL/u,
    message: 'Three dots end the fields in YAML.',
    hint: 'Take them out.',
    meant: { shown: '' },
  },
  {
    typed: /^ *(?:- +)*(?<shown>[–—•*−])\s/u,
    message: BULLET,
    hint: 'Write a plain hyphen and a space.',
    meant: { shown: '-' },
    sure: true,
  },
  {
    typed: /^ *(?<shown>(?<dash>-)[{["'A-Za-z])/u,
    message: BULLET,
    hint: 'Put a space after the hyphen.',
    meant: { dash: '- ' },
    sure: true,
  },
  {
    typed: /^ *- +(?<shown>(?<open>\()\s*[a-z-]+\s*:[^)\n]*(?<close>\))?)/u,
    message: 'The fields of an entry stand in braces, not in parentheses.',
    hint: 'Write `- { name: value, name: value }`.',
    meant: { open: '{', close: '}' },
  },
  {
    typed: /^ *- +(?<open>)[a-z-]+\s*:[^{\n]*,\s*[a-z-]+\s*:.*(?<shown>\})EOL/u,
    message: 'A brace is closed here that was not opened.',
    hint: 'Begin the entry with `- {`.',
    meant: { open: '{ ' },
  },
  {
    code: 'A208',
    typed: /^ *(?:- +)*(?<name>[A-Za-z][\w-]*)(?<shown>[ \t]*(?:::|：)[ \t]*|:[^\S \t\r\n]+|:(?=[^\s:])(?!\/\/))(?<value>.*?)EOL/u,
    message: COLON,
    hint: NAMED,
    meant: { shown: ({ value }) => (value === '' ? ':' : ': ') },
    sure: true,
  },
  {
    code: 'A208',
    typed: /^ *(?:- +)*(?<name>KNOWN)(?<shown>[ \t]*=[ \t]*)(?<value>.*?)EOL/u,
    message: COLON,
    hint: NAMED,
    meant: { shown: ': ' },
    sure: true,
  },
  {
    typed: /^(?<indent> *)(?<shown>[A-Za-z][\w-]*)(?<colon>[^\w\s:-]?)[ \t\r]*\n(?:\k<indent> +\S|- )/u,
    message: NO_COLON,
    hint: ({ shown }) => `Write \`${shown}:\`.`,
    meant: { colon: ':' },
  },
  {
    typed: /^ *(?<shown>(?<name>KNOWN)(?<colon>[^\w\s:=-]?)[ \t]+(?<value>[^\s:=].*?))EOL/u,
    message: NO_COLON,
    hint: NAMED,
    meant: { colon: ':' },
  },
  {
    typed: /^ *(?<shown>[A-Za-z][\w-]*(?![\w-]|[ \t]*(?:[:：=]|\r?\n(?: |- ))).*?)EOL/u,
    message: NO_COLON,
    hint: 'If it goes on from the line above, indent it with two spaces.',
    meant: { shown: '' },
  },
];

/** What stands on a line before its first brace or bracket, when that begins its value. */
const BEFORE_BRACES = /^\s*(?:[-–—•*−]\s*)*(?:[A-Za-z][\w-]*\s*(?:::|：|:|=)?\s*)?(?=[{[])/u;
const BEFORE_VALUE = /^\s*(?:- +)*(?<field>[A-Za-z][\w-]*)\s*(?:::|：|:|=)\s*/;
const SOUND = /^(?:$|[|>][+-]?\d?$|\{.*\}$|\[.*\]$|"(?:[^"\\]|\\.)*"$|'(?:[^']|'')*'$)/;

/**
 * @param below where the next line ends that is not blank
 * @param known names that fields have
 * @returns every slip on the line, one of each kind
 */
export function lineSlips(text: string, { start, end }: Line, below: number, known: FieldNames): Slip[] {
  if (end - start > LONGEST) return [];
  const line = text.slice(start, end);
  const rows = slipsByTable(ON_A_LINE, text, start, below, known).map((slip) => ({
    ...slip,
    edits: [...slip.edits, ...alongside(text, slip, end)],
  }));
  const before = BEFORE_BRACES.exec(line)?.[0].length;
  const inBraces = before === undefined ? [] : braceSlips(text, maskQuotations(line), start, start + before, known);
  return [...rows, ...(inBraces.length > 0 ? inBraces : valueSlips(line, start, known))];
}

function valueSlips(line: string, start: number, known: FieldNames): Slip[] {
  const before = BEFORE_VALUE.exec(line);
  const value = withoutComment(line.slice(before?.[0].length));
  const slip =
    before && !SOUND.test(value) && !value.startsWith('//')
      ? valueSlip({ field: before.groups?.field ?? null, start: start + before[0].length, text: value }, false, known)
      : null;
  return slip ? [slip] : [];
}

/** A comment begins with ` #`; a value that begins with `#` was hardly meant as one. */
function withoutComment(text: string): string {
  const sound = /^(?:"(?:[^"\\]|\\.)*"|'(?:[^']|'')*')/.exec(text)?.[0] ?? '';
  return (/^#\s/.test(text) ? '' : sound + text.slice(sound.length).replace(/\s#.*$/, '')).trimEnd();
}

/** Fields that stand under the one after a hyphen go along when a space is put between. */
function alongside(text: string, { message, edits }: Slip, end: number): Edit[] {
  const [dash] = edits;
  if (message !== BULLET || dash?.text !== '- ') return [];
  const column = dash.start - text.lastIndexOf('\n', dash.start - 1);
  const moved: Edit[] = [];
  for (const { index, 0: all } of text.slice(end).matchAll(/\n *(?=\S)/g)) {
    if (all.length - 1 < column) break;
    if (all.length - 1 === column) moved.push({ start: end + index + 1, end: end + index + 1, text: ' ' });
  }
  return moved;
}
