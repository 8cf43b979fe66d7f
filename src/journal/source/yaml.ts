/**
 * YAML to plain values with a place for each. Every scalar stays text (YAML's failsafe schema): `yes`,
 * `007` and `2031-03-12` are what was typed, and no number ever passes through a float.
 */
import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, parseDocument, type YAMLMap, type YAMLSeq } from 'yaml';
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { SourceText } from './text.ts';
import { type Span, type Spot, type Tree, treeOf, type Value } from './tree.ts';
import { coverSecondColon, describeYamlError, uncovered } from './yaml-slips.ts';

interface Reading {
  readonly source: SourceText;
  readonly base: number;
  readonly diagnostics: Diagnostic[];
}

/** A value, and where it is written. */
interface Read {
  readonly value: Value;
  readonly spot: Spot;
}

/**
 * Reads the YAML between two offsets of a file. What breaks YAML's rules is reported and the rest kept.
 *
 * @param expects what the file holds at its top: fields, or a list of entries
 * @returns the tree, or null when there is nothing of that kind to read
 */
export function readYaml(
  source: SourceText,
  start: number,
  end: number,
  expects: 'fields' | 'list' = 'fields',
): { tree: Tree | null; diagnostics: Diagnostic[] } {
  const reading: Reading = { source, base: start, diagnostics: [] };
  let contents: Node | null = null;
  try {
    contents = parsed(source.text.slice(start, end), reading);
  } catch {
    const message = 'The YAML is nested too deeply to be read.';
    reading.diagnostics.push(diagnostic('A201', source.place(start, start), message));
    return { tree: null, diagnostics: reading.diagnostics };
  }
  const fits = expects === 'fields' ? isMap(contents) : isSeq(contents);
  const read = fits ? convert(contents, null, reading) : undefined;
  if (read === undefined) {
    if (reading.diagnostics.length === 0) reading.diagnostics.push(unexpected(source, start, contents, expects));
    return { tree: null, diagnostics: reading.diagnostics };
  }
  return { tree: treeOf(source, read.value, read.spot), diagnostics: oneALine(reading.diagnostics) };
}

/** A second colon in a value makes all that follows a part of it; with the colon covered the rest is read as it was meant. */
const MOST_COVERED = 20;

function parsed(written: string, reading: Reading): Node | null {
  let text = written;
  for (let round = 0; ; round += 1) {
    const document = parseDocument(text, { schema: 'failsafe', uniqueKeys: false, prettyErrors: false, logLevel: 'silent' });
    const { errors, warnings, contents } = document;
    const covered = round < MOST_COVERED ? coverSecondColon(text, errors) : null;
    const problems = covered ? [covered.error] : [...errors.slice(0, 5), ...warnings.slice(0, 5)];
    reading.diagnostics.push(...problems.map((problem) => describeYamlError(reading.source, reading.base, text, problem)));
    if (!covered) return contents;
    text = covered.text;
  }
}

function unexpected(source: SourceText, start: number, contents: Node | null, expects: 'fields' | 'list'): Diagnostic {
  const [from] = contents?.range ?? [0];
  const newline = source.text.indexOf('\n', start + from);
  const place = source.place(start + from, newline === -1 ? source.text.length : newline);
  const form =
    expects === 'fields'
      ? 'Fields were expected here, each written `name: value`.'
      : 'A list was expected here: entries that begin with `- `.';
  return diagnostic('A207', place, form);
}

/** One slip makes the parser complain several times on its line; the first says it best. */
function oneALine(diagnostics: readonly Diagnostic[]): Diagnostic[] {
  const seen = new Set<string>();
  return diagnostics.filter((each) => {
    const yamlOnly = each.code === 'A201' || each.code === 'A208';
    const key = `${each.place.line}`;
    if (yamlOnly && seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function convert(node: Node | null | undefined, key: Span | null, reading: Reading): Read | undefined {
  if (node === null || node === undefined) return undefined;
  reportAnchor(node, reading);
  if (isAlias(node)) return undefined;
  if (isMap(node)) return mapping(node, key, reading);
  if (isSeq(node)) return sequence(node, key, reading);
  if (!isScalar(node)) return undefined;
  const text = uncovered(String(node.value ?? ''));
  const quoted = node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE';
  return text === '' && !quoted ? undefined : { value: text, spot: spotOf(node, key, null, reading) };
}

function reportAnchor(node: Node, reading: Reading): void {
  const anchored = isAlias(node) || ('anchor' in node && node.anchor !== undefined);
  if (!anchored) return;
  const mark = isAlias(node) ? `*${node.source}` : `&${String((node as { anchor?: string }).anchor)}`;
  const span = spanOf(node, reading);
  reading.diagnostics.push(
    diagnostic('A204', reading.source.place(...span), `\`${mark}\` is an anchor or alias, which notes do not use.`, {
      hint: 'Write the value out; if the text really begins with this mark, put it in double quotes.',
    }),
  );
}

function mapping(node: YAMLMap, key: Span | null, reading: Reading): Read {
  // A null prototype: a field named `__proto__` or `constructor` is then a field like any other.
  const value: { [key: string]: Value } = Object.create(null);
  const inside = new Map<string, Spot>();
  const all = new Map<string, Span>();
  for (const pair of node.items) {
    const name = keyText(pair);
    const nameSpan = spanOf(pair.key as Node | null, reading);
    const first = all.get(name);
    if (first) reportDuplicate(name, nameSpan, first, reading);
    else all.set(name, nameSpan);
    if (node.flow === true && pair.value === null && name !== '') {
      reportComma(name, nameSpan, reading);
      continue;
    }
    const read = convert(pair.value as Node | null, nameSpan, reading);
    if (read === undefined || first) continue;
    value[name] = read.value;
    inside.set(name, read.spot);
  }
  return { value, spot: spotOf(node, key, inside, reading) };
}

function keyText(pair: Pair): string {
  return isScalar(pair.key) ? String(pair.key.value ?? '') : '';
}

function reportDuplicate(key: string, span: Span, first: Span, reading: Reading): void {
  const { source } = reading;
  reading.diagnostics.push(
    diagnostic('A203', source.place(...span), `\`${key}\` stands here a second time.`, {
      hint: 'Keep one of them; a list takes several values under one key.',
      related: [{ place: source.place(...first), message: 'It is first given here.' }],
    }),
  );
}

function reportComma(key: string, span: Span, reading: Reading): void {
  reading.diagnostics.push(
    diagnostic('A208', reading.source.place(...span), `\`${key}\` has no value: inside braces a comma ends the value before it.`, {
      hint: `If the comma belongs to the text, put the whole text in double quotes: "…, ${key}".`,
    }),
  );
}

function sequence(node: YAMLSeq, key: Span | null, reading: Reading): Read {
  const read = node.items.map((item) => convert(item as Node, null, reading)).filter((item) => item !== undefined);
  const inside = read.map(({ spot }) => spot);
  return { value: read.map(({ value }) => value), spot: spotOf(node, key, inside, reading) };
}

/** The parser counts a comment that follows to a block; what is shown of it ends with its last value. */
function spotOf(node: Node, key: Span | null, inside: Spot['inside'], reading: Reading): Spot {
  const [start, end] = spanOf(node, reading);
  const block = (isMap(node) || isSeq(node)) && node.flow !== true;
  const lastEnd = block && inside !== null ? [...inside.values()].at(-1)?.end : undefined;
  return { start, end: lastEnd ?? end, key, inside };
}

function spanOf(node: Node | null | undefined, reading: Reading): Span {
  const range = node?.range;
  return range ? [reading.base + range[0], reading.base + range[1]] : [reading.base, reading.base];
}
