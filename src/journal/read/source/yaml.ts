/**
 * YAML to plain values with a place for each. Every scalar stays text (YAML's failsafe schema): `yes`,
 * `007` and `2031-03-12` are what was typed, and no number ever passes through a float.
 */
import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';
import { type Diagnostic, diagnostic } from '../../diagnostics/diagnostic.ts';
import type { Place } from '../../diagnostics/place.ts';
import type { SureRepair } from '../../diagnostics/repair.ts';
import { type Mended, mend } from '../mending/mend.ts';
import type { MendedText } from '../mending/mended-text.ts';
import { describeYamlError, isLost } from '../mending/not-mended.ts';
import type { FieldNames } from '../mending/slip.ts';
import { tooDeepAt } from './parsed-yaml.ts';
import type { SourceText } from './text.ts';
import { MOST_NESTED, type Span, type Spot, type Tree, treeOf, type Value } from './tree.ts';

interface Progress {
  readonly source: SourceText;
  readonly base: number;
  readonly known: FieldNames;
  text: MendedText | null;
  readonly diagnostics: Diagnostic[];
  readonly mended: Place[];
  readonly repairs: SureRepair[];
}

const NO_NAMES: FieldNames = { all: new Set(), prose: new Set() };

/** A value, and where it is written. */
interface PlacedValue {
  readonly value: Value;
  readonly spot: Spot;
}

/**
 * Reads the YAML between two offsets of a file. What breaks YAML's rules is reported and the rest kept.
 *
 * @param expects what the file holds at its top: fields, or a list of entries
 * @param known names that fields have
 * @returns the tree, or null when there is nothing of that kind to read; what is wrong; where something was put right;
 *   and what of that may be written without asking
 */
export function readYaml(
  source: SourceText,
  start: number,
  end: number,
  expects: 'fields' | 'list' = 'fields',
  known: FieldNames = NO_NAMES,
): { tree: Tree | null; diagnostics: Diagnostic[]; mended: readonly Place[]; repairs: readonly SureRepair[] } {
  const progress: Progress = { source, base: start, known, text: null, diagnostics: [], mended: [], repairs: [] };
  const mended = mend(source.text.slice(start, end), known);
  const deep = tooDeepAt(mended.document);
  if (deep !== null)
    return { tree: null, diagnostics: [nestedTooDeep(source.place(start + deep, start + deep + 1))], mended: [], repairs: [] };
  const contents = parsed(mended, progress);
  const fits = expects === 'fields' ? isMap(contents) : isSeq(contents);
  const read = fits ? convert(contents, null, progress) : undefined;
  if (read === undefined) {
    if (progress.diagnostics.length === 0) progress.diagnostics.push(unexpected(source, start, contents, expects));
    return { tree: null, diagnostics: progress.diagnostics, mended: progress.mended, repairs: progress.repairs };
  }
  return {
    tree: treeOf(source, read.value, read.spot),
    diagnostics: progress.diagnostics,
    mended: progress.mended,
    repairs: progress.repairs,
  };
}

function nestedTooDeep(place: Place): Diagnostic {
  const message = `The YAML is nested more than ${MOST_NESTED} deep, which no file of a journal is.`;
  const hint = 'An entry is three or four levels deep: take out the braces, brackets and indentation that are too many.';
  return diagnostic('A201', place, message, { hint });
}

/** Where the parser is lost, what it says after the first few errors tells nothing. */
const MOST_TOLD = 5;

function placeOf(start: number, end: number, text: MendedText, { source, base }: Progress): Place {
  return source.place(base + text.origin(start), base + text.origin(Math.max(start + 1, end)));
}

/** Tells of what was mended and what could not be, and keeps the parser's document. */
function parsed(mended: Mended, progress: Progress): Node | null {
  progress.text = mended.text;
  const placeAt = ({ start, end }: { start: number; end: number }) => progress.source.place(progress.base + start, progress.base + end);
  for (const { code, start, end, message, hint, edits, quiet, sure } of mended.slips) {
    if (sure || quiet)
      progress.repairs.push(
        ...edits.map((edit) => ({ place: placeAt(edit), text: edit.text, told: quiet ? null : placeAt({ start, end }) })),
      );
    if (quiet) continue;
    progress.mended.push(...edits.map(placeAt));
    progress.diagnostics.push(diagnostic(code, placeAt({ start, end }), message, { hint }));
  }
  // What the parser says again on a line, or of a line that is told already, is only an echo.
  const told = new Set(progress.diagnostics.map(({ place }) => place.line));
  const most = told.size + MOST_TOLD;
  for (const { at, error } of mended.complaints) {
    const place = placeOf(at, error?.pos[1] ?? at, mended.text, progress);
    if (error === null || told.has(place.line) || told.size >= most || (told.size > 0 && isLost(error.message))) continue;
    told.add(place.line);
    progress.diagnostics.push(describeYamlError(place, mended.text.text, at, error));
  }
  return mended.document.contents as Node | null;
}

function unexpected(source: SourceText, start: number, contents: Node | null, expects: 'fields' | 'list'): Diagnostic {
  const [from] = contents?.range ?? [0];
  const newline = source.text.indexOf('\n', start + from);
  const place = source.place(start + from, newline === -1 ? source.text.length : newline);
  const form =
    expects === 'fields'
      ? 'Fields were expected here, each written `name: value`.'
      : 'A list was expected here: entries that begin with `- `.';
  const hint =
    expects === 'fields'
      ? source.file.startsWith('sessions/')
        ? 'Put a list under the field that it belongs to, such as `parts:`, and words in prose under the second `---`.'
        : 'Write each field on a line of its own: `name: value`.'
      : 'Begin each entry with `- `, as in `- { id: drum, name: Drum, origin: original }`.';
  return diagnostic('A207', place, form, { hint });
}

function convert(node: Node | null | undefined, key: Span | null, progress: Progress): PlacedValue | undefined {
  if (node === null || node === undefined) return undefined;
  reportAnchor(node, progress);
  if (isAlias(node)) return undefined;
  if (isMap(node)) return mapping(node, key, progress);
  if (isSeq(node)) return sequence(node, key, progress);
  if (!isScalar(node)) return undefined;
  const text = String(node.value ?? '');
  const quoted = node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE';
  return text === '' && !quoted ? undefined : { value: text, spot: spotOf(node, key, null, progress) };
}

function reportAnchor(node: Node, progress: Progress): void {
  const anchored = isAlias(node) || ('anchor' in node && node.anchor !== undefined);
  if (!anchored) return;
  const mark = isAlias(node) ? `*${node.source}` : `&${String((node as { anchor?: string }).anchor)}`;
  const [start, end] = spanOf(node, progress);
  const span: Span = start < end ? [start, end] : [progress.source.text.lastIndexOf(mark, start), start];
  progress.diagnostics.push(
    diagnostic('A204', progress.source.place(...span), `\`${mark}\` is an anchor or alias, which notes do not use.`, {
      hint: 'Write the value out; if the text really begins with this mark, put it in double quotes.',
    }),
  );
}

function mapping(node: YAMLMap, key: Span | null, progress: Progress): PlacedValue {
  // A null prototype: a field named `__proto__` or `constructor` is then a field like any other.
  const value: { [key: string]: Value } = Object.create(null);
  const inside = new Map<string, Spot>();
  const all = new Map<string, Span>();
  let again = false;
  for (const pair of node.items) {
    const name = keyText(pair);
    const nameSpan = spanOf(pair.key as Node | null, progress);
    const first = all.get(name);
    // Fields that follow a second one and stand twice themselves are the rest of an entry whose hyphen is missing.
    if (first && !again) reportDuplicate(name, nameSpan, first, progress);
    if (!first) all.set(name, nameSpan);
    again = first !== undefined;
    const read = convert(pair.value as Node | null, nameSpan, progress);
    if (read === undefined || first) continue;
    value[name] = read.value;
    inside.set(name, read.spot);
  }
  return { value, spot: spotOf(node, key, inside, progress) };
}

function keyText(pair: Pair): string {
  return isScalar(pair.key) ? String(pair.key.value ?? '') : '';
}

function reportDuplicate(key: string, span: Span, first: Span, progress: Progress): void {
  const { source } = progress;
  progress.diagnostics.push(
    diagnostic('A203', source.place(...span), `\`${key}\` stands here a second time.`, {
      hint: 'Keep one of them. If another entry begins here, put `- ` before it.',
      related: [{ place: source.place(...first), message: 'It is first given here.' }],
    }),
  );
}

function sequence(node: YAMLSeq, key: Span | null, progress: Progress): PlacedValue {
  const read = node.items.map((item) => convert(item as Node, null, progress)).filter((item) => item !== undefined);
  const inside = read.map(({ spot }) => spot);
  return { value: read.map(({ value }) => value), spot: spotOf(node, key, inside, progress) };
}

/** The parser counts a comment that follows to a block; what is shown of it ends with its last value. */
function spotOf(node: Node, key: Span | null, inside: Spot['inside'], progress: Progress): Spot {
  const [start, end] = spanOf(node, progress);
  const block = (isMap(node) || isSeq(node)) && node.flow !== true;
  const lastEnd = block && inside !== null ? [...inside.values()].at(-1)?.end : undefined;
  return { start, end: lastEnd ?? end, key, inside };
}

function spanOf(node: Node | null | undefined, progress: Progress): Span {
  const range = node?.range;
  const origin = (offset: number) => progress.base + (progress.text?.origin(offset) ?? offset);
  return range ? [origin(range[0]), origin(range[1])] : [progress.base, progress.base];
}
