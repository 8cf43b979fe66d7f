/**
 * YAML as it was meant: wherever the parser stumbles over a slip on a line, the slip is told and mended, and what
 * comes after is read as if it had been typed so. A mend stands only when the parser stumbles less for it.
 */
import { type ParsedYaml, parsedYaml, tooDeepAt } from '../source/parsed-yaml.ts';
import { type Complaint, complaintsOf } from './complaints.ts';
import { continuationSlip, indentationSlip } from './indentation.ts';
import { type Line, lineSlips } from './line-slips.ts';
import { MendedText } from './mended-text.ts';
import { isLost } from './not-mended.ts';
import type { FieldNames, Slip } from './slip.ts';

interface Parsed {
  readonly document: ParsedYaml;
  readonly text: MendedText;
  readonly complaints: readonly Complaint[];
}

/** The complaints are of what could not be mended. */
export interface Mended extends Parsed {
  /** What was mended, with its place in what was written. */
  readonly slips: readonly Slip[];
}

/** So many characters may be parsed to find the mends of one file; a note is some thousands long. */
const MOST_PARSED = 400_000;
/** Each error takes the parser about as long as so many characters. */
const AN_ERROR = 100;
/** A line with more slips than this is past mending. */
const MOST_ON_A_LINE = 4;

/**
 * @param known names that fields have
 * @returns what is nested too deep as the parser left it, see `tooDeepAt`
 */
export function mend(written: string, known: FieldNames): Mended {
  const slips: Slip[] = [];
  let left = MOST_PARSED;
  let now = parse(new MendedText(written));
  if (tooDeepAt(now.document) !== null) return { ...now, slips };
  for (let better = mended(now); better !== null; better = mended(better)) now = better;
  return { ...now, slips };

  /** The first mend that stands; null when there is none, or no time to look for it. */
  function mended(now: Parsed): Parsed | null {
    for (const suspect of suspects(now, known)) {
      const line = lineAt(written, now.text.origin(suspect.start));
      const isPast = slips.filter(({ start }) => lineAt(written, start) === line).length >= MOST_ON_A_LINE;
      const slip = isPast ? leftOut(now.text.text, suspect.start) : suspect;
      if (left <= 0) return null;
      left -= written.length + 1 + AN_ERROR * now.complaints.length;
      const tried = parse(now.text.with(slip.edits));
      if (!isBetter(tried, now)) continue;
      slips.push(asWritten(slip, now.text));
      return tried;
    }
    return null;
  }
}

function asWritten(slip: Slip, text: MendedText): Slip {
  const edits = slip.edits.map((edit) => ({ ...edit, start: text.origin(edit.start), end: text.origin(edit.end) }));
  return { ...slip, start: text.origin(slip.start), end: text.origin(slip.end), edits };
}

function lineAt(text: string, offset: number): number {
  return text.lastIndexOf('\n', offset - 1);
}

function parse(text: MendedText): Parsed {
  const document = parsedYaml(text.text, { schema: 'failsafe', uniqueKeys: false, logLevel: 'silent' });
  return { document, text, complaints: complaintsOf(document, text.text) };
}

/** What is mended lets the parser see more, and so complain of more: it is better when the first complaint has gone. */
function isBetter(tried: Parsed, now: Parsed): boolean {
  if (tooDeepAt(tried.document) !== null) return false;
  if (tried.complaints.length < now.complaints.length) return true;
  if (openQuotes(tried) < openQuotes(now)) return true;
  const [before] = now.complaints;
  const [after] = tried.complaints;
  return before !== undefined && after !== undefined && tried.text.origin(after.at) > now.text.origin(before.at);
}

function openQuotes({ complaints }: Parsed): number {
  return complaints.filter(({ error }) => error !== null && isOpenQuote(error.message)).length;
}

function isOpenQuote(message: string): boolean {
  return /Missing closing .?quote/.test(message);
}

/** Slips near the first complaint, the likeliest first. */
function* suspects(now: Parsed, known: FieldNames): Generator<Slip> {
  const { text } = now.text;
  const lines = linesOf(text);
  const seen = new Set<number>();
  for (const { at, error } of now.complaints) {
    const here = lines.findLastIndex((line) => line.start <= at);
    const before = lines.findLastIndex((line, n) => n < here && !isBlank(text, line));
    const after = lines.findIndex((line, n) => n > here && !isBlank(text, line));
    const opened = error && isOpenQuote(error.message) ? openedAbove(text, lines, here) : [];
    const goesOn = continuationSlip(text, lines, here);
    if (goesOn) yield goesOn;
    for (const n of [...opened, here, before, after]) {
      const line = lines[n];
      if (!line || seen.has(n)) continue;
      seen.add(n);
      const below = lines.find((each, m) => m > n && !isBlank(text, each));
      yield* lineSlips(text, line, below?.end ?? line.end, known);
      const indentation = indentationSlip(text, lines, n);
      if (indentation) yield indentation;
    }
    const line = lines[here];
    if (line && error && isLost(error.message)) yield leftOut(text, line.start);
  }
}

/** Without the line that stops the parser the rest can be read. */
function leftOut(text: string, at: number): Slip {
  const start = lineAt(text, at) + 1;
  const end = start + (/^[^\r\n]*/.exec(text.slice(start))?.[0].length ?? 0);
  const message = 'This line cannot be made out as YAML.';
  const hint = 'Look for a bracket, a brace or a quotation mark too many or too few, here and in the line above.';
  return { code: 'A201', start: start + text.slice(start, end).search(/\S/), end, message, hint, edits: [{ start, end, text: '' }] };
}

/** The nearest lines above on which a quotation mark may be left open. */
function openedAbove(text: string, lines: readonly Line[], from: number): number[] {
  const found: number[] = [];
  for (let n = from; n >= 0 && found.length < 8; n -= 1) {
    const { start, end } = lines[n] as Line;
    if (/[:\-,[{]\s+["'][^"']*(?:["'][^"']*["'][^"']*)*$/.test(text.slice(start, end))) found.push(n);
  }
  return found;
}

function isBlank(text: string, { start, end }: Line): boolean {
  return /^\s*(?:#.*)?$/.test(text.slice(start, end));
}

function linesOf(text: string): Line[] {
  return [...text.matchAll(/[^\n]*(?:\n|$)/g)].map(({ index, 0: line }) => ({
    start: index,
    end: index + line.replace(/\r?\n$/, '').length,
  }));
}
