/** Values that mean something else to YAML than to the person who typed them. */
import { withoutPrintedMarks, withPoint } from '../../values/as-typed.ts';
import { type FieldNames, patternOf, type Slip } from './slip.ts';

/** Where a value is written, and under which field. */
export interface Written {
  readonly field: string | null;
  readonly start: number;
  readonly text: string;
}

interface Fault {
  readonly is: (text: string) => boolean;
  readonly message: string;
  /** It is a quotation without its end. */
  readonly unclosed?: boolean;
  /** Where in the value it is shown. */
  readonly from?: (text: string) => number;
  /** In a value of its own line, or in prose, quotation marks around all of it are what was meant. */
  readonly sure?: boolean;
}

const QUOTED = /^(?:"(?:[^"\\]|\\.)*"|'(?:[^']|'')*')/;

const COLON = 'A second colon stands in this value.';

const IN_ANY: readonly Fault[] = [
  { is: (text) => /^["']/.test(text) && !QUOTED.test(text), message: 'A quotation mark that was opened is not closed.', unclosed: true },
  {
    is: (text) => QUOTED.test(text),
    message: 'Something follows where the value ends.',
    from: (text) => (QUOTED.exec(text)?.[0].length ?? 0) + (/^\s*/.exec(text.replace(QUOTED, ''))?.[0].length ?? 0),
  },
  { is: (text) => /^[|>]/.test(text), message: 'The value begins with `|` or `>`, which in YAML opens a block of text.' },
  { is: (text) => /^[@`%&*!{}[\],]/.test(text), message: 'The value begins with a mark that YAML keeps for itself.', sure: true },
  { is: (text) => /^[?:-](?:\s|$)/.test(text), message: 'The value begins with a mark that YAML keeps for itself.' },
  { is: (text) => /^#/.test(text), message: 'The value begins with `#`, which in YAML begins a comment.' },
  { is: (text) => /:(?:\s|$)/.test(text), message: COLON, sure: true },
];

const COMMA = 'Inside braces a comma ends a value, and the words after this one stand alone.';

const IN_BRACES: readonly Fault[] = [
  {
    is: (text) => text.includes(','),
    message: COMMA,
    from: (text) => text.indexOf(',') + 1 + (/^\s*/.exec(text.slice(text.indexOf(',') + 1))?.[0].length ?? 0),
  },
  { is: (text) => /[{}[\]]/.test(text), message: 'Inside braces a brace or bracket cannot stand in a value.' },
  { is: (text) => /\s#/.test(text), message: 'In a value ` #` begins a comment, and the rest of the line with it.' },
];

/** @returns what is the matter with a value that is not in sound quotation marks, or null */
export function valueSlip({ text, start, field }: Written, inBraces: boolean, names: FieldNames): Slip | null {
  const fault = [...IN_ANY, ...(inBraces ? IN_BRACES : [])].find(({ is }) => is(text));
  if (!fault) return null;
  const quiet = isPlain(text, fault, field, names);
  const meant = (quiet ? null : decimalMeant(text)) ?? { text: quoted(text), hint: severalHint(text, fault, field, names) };
  const shown = `\`${field === null ? '' : `${field}: `}${meant.text}\``;
  return {
    code: fault.unclosed ? 'A201' : 'A208',
    start: start + (fault.from?.(text) ?? 0),
    end: start + text.length,
    message: fault.message,
    hint: meant.hint ?? hintFor(fault, shown),
    edits: [{ start, end: start + text.length, text: meant.text }],
    quiet,
    sure: fault.sure === true && (!inBraces || names.prose.has(field ?? '')),
  };
}

/** Words that hardly any text is without: as a field one is followed by an id, a place or a number. */
const LITTLE = /^(?:as|at|by|for|from|how|in|into|of|on|to|which|with)$/;

/** Whether after a comma there may stand a field without its colon: a name that the entry may still take, and a value. */
function forgetsColon(text: string, names: FieldNames): boolean {
  const fields = patternOf({ ...names, all: names.open ?? names.all });
  return [...text.matchAll(new RegExp(`,\\s*(${fields})\\s+([^\\s,]+(?:[ \\t]+[^\\s,]+)?)`, 'g'))].some(
    ([, name = '', value = '']) => !LITTLE.test(name) || /[-\d]/.test(value),
  );
}

/**
 * Text within printed quotation marks is as good as quoted. In prose a comma or a colon is one, unless a field may begin
 * there. One comma before one or two digits is left to whatever reads the number.
 */
function isPlain(text: string, { message }: Fault, field: string | null, names: FieldNames): boolean {
  if (withoutPrintedMarks(text) !== text) return true;
  if (message === COMMA && withPoint(text) !== text) return /^-?\d+,\d+(?: [A-Za-z][^:]*|%)?$/.test(text);
  if (!names.prose.has(field ?? '')) return false;
  if (message === COMMA) return !forgetsColon(text, names);
  return message === COLON && !new RegExp(`(?<![\\w-])${patternOf(names)}:(?:\\s|$)`, 'i').test(text);
}

function hintFor({ unclosed }: Fault, shown: string): string {
  if (unclosed) return `Close it on the same line: ${shown}.`;
  return `Put the whole value in ${shown.includes(`'`) ? '' : 'double '}quotes: ${shown}.`;
}

/** What to type for `did: removed, inspected`, a list without its brackets; it is read as one text, since it may be that. */
function severalHint(text: string, { message }: Fault, field: string | null, { lists }: FieldNames): string | null {
  if (message !== COMMA || field === null || !lists?.has(field) || /[{}[\]"':#]/.test(text)) return null;
  return `Several stand in brackets: \`${field}: [${text}]\`; one with a comma in it stands in double quotes.`;
}

/** `1,234.00` and `9,043 in`: the comma of a number. */
function decimalMeant(written: string): { text: string; hint: string } | null {
  // A sign of currency is told by whoever reads the amount.
  const [, sign = '', text = ''] = /^(\p{Sc}?\s*)(.*)$/u.exec(written) ?? [];
  const other = /^\d{1,3}(?:\.\d{3})+,\d{1,2}$/.test(text) ? text.replaceAll('.', '').replace(',', '.') : null;
  if (other !== null)
    return { text: sign + other, hint: `A number is written without marks between its thousands, and with a point: \`${other}\`.` };
  if (/^\d{1,3}(?:,\d{3})+(?:\.\d+)?$/.test(text)) {
    const meant = text.replaceAll(',', '');
    return { text: sign + meant, hint: `A number is written without commas: \`${meant}\`.` };
  }
  const decimal = /^(-?\d+),(\d+)([\s%A-Za-z].*)?$/.exec(text);
  if (!decimal || /[,:{}[\]]/.test(decimal[3] ?? '')) return null;
  const meant = `${decimal[1]}.${decimal[2]}${decimal[3] ?? ''}`;
  return { text: sign + meant, hint: `A decimal is written with a point: \`${meant}\`.` };
}

/** The value in quotation marks that YAML understands. */
function quoted(text: string): string {
  const wrapped = /^(["'])(.*)\1$/.exec(text)?.[2] ?? withoutPrintedMarks(text);
  const bare = wrapped !== text || QUOTED.test(text) ? wrapped : text.replace(/^["']/, '');
  if (bare.includes('"') && !bare.includes("'")) return `'${bare}'`;
  return `"${bare.replaceAll('\\', '\\\\').replaceAll('"', '\\"')}"`;
}
