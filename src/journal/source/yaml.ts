/**
 * YAML to plain values with a place for each. Every scalar stays text (YAML's failsafe schema): `yes`,
 * `007` and `2031-03-12` are what was typed, and no number ever passes through a float.
 */
import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, parseDocument, type YAMLMap, type YAMLSeq } from 'yaml';
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { Place } from '../model.ts';
import type { SourceText } from './text.ts';
import { describeYamlError } from './yaml-slips.ts';

export type Value = string | Value[] | { [key: string]: Value };
export type Path = readonly PropertyKey[];

type Span = readonly [start: number, end: number];
interface KeyPlace {
  readonly key: Span;
  readonly value: Span;
}

/** Parsed YAML: values, and where each of them is written. */
export interface Tree {
  readonly value: Value;
  /** Where the value at a path is written; the nearest that contains it when it is not there. */
  placeOf(path: Path): Place;
  /** Where the key at the end of a path is written. */
  keyPlaceOf(path: Path): Place;
  /** Takes a value out, so that what is left can still be understood. */
  drop(path: Path): void;
}

interface Reading {
  readonly source: SourceText;
  readonly base: number;
  readonly diagnostics: Diagnostic[];
  readonly keys: WeakMap<object, Map<string, KeyPlace>>;
  readonly items: WeakMap<object, Span[]>;
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
  const reading: Reading = { source, base: start, diagnostics: [], keys: new WeakMap(), items: new WeakMap() };
  const text = source.text.slice(start, end);
  let contents: Node | null = null;
  try {
    const document = parseDocument(text, { schema: 'failsafe', uniqueKeys: false, prettyErrors: false, logLevel: 'silent' });
    for (const problem of [...document.errors.slice(0, 5), ...document.warnings.slice(0, 5)]) {
      reading.diagnostics.push(describeYamlError(source, start, text, problem));
    }
    contents = document.contents;
  } catch {
    const message = 'The YAML is nested too deeply to be read.';
    reading.diagnostics.push(diagnostic('A201', source.place(start, start), message));
    return { tree: null, diagnostics: reading.diagnostics };
  }
  const fits = expects === 'fields' ? isMap(contents) : isSeq(contents);
  const value = fits ? convert(contents, reading) : undefined;
  if (value === undefined) {
    if (reading.diagnostics.length === 0) reading.diagnostics.push(unexpected(source, start, contents, expects));
    return { tree: null, diagnostics: reading.diagnostics };
  }
  return { tree: treeOf(value, spanOf(contents, reading), reading), diagnostics: oneALine(reading.diagnostics) };
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

function convert(node: Node | null | undefined, reading: Reading): Value | undefined {
  if (node === null || node === undefined) return undefined;
  reportAnchor(node, reading);
  if (isAlias(node)) return undefined;
  if (isMap(node)) return mapping(node, reading);
  if (isSeq(node)) return sequence(node, reading);
  if (!isScalar(node)) return undefined;
  const text = String(node.value ?? '');
  const quoted = node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE';
  return text === '' && !quoted ? undefined : text;
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

function mapping(node: YAMLMap, reading: Reading): { [key: string]: Value } {
  // A null prototype: a field named `__proto__` or `constructor` is then a field like any other.
  const result: { [key: string]: Value } = Object.create(null);
  const places = new Map<string, KeyPlace>();
  const all = new Map<string, Span>();
  for (const pair of node.items) {
    const key = keyText(pair);
    const keySpan = spanOf(pair.key as Node | null, reading);
    const first = all.get(key);
    if (first) reportDuplicate(key, keySpan, first, reading);
    else all.set(key, keySpan);
    if (node.flow === true && pair.value === null && key !== '') {
      reportComma(key, keySpan, reading);
      continue;
    }
    const value = convert(pair.value as Node | null, reading);
    if (value === undefined || first) continue;
    result[key] = value;
    places.set(key, { key: keySpan, value: spanOf(pair.value as Node, reading) });
  }
  reading.keys.set(result, places);
  return result;
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

function sequence(node: YAMLSeq, reading: Reading): Value[] {
  const result: Value[] = [];
  const spans: Span[] = [];
  for (const item of node.items) {
    const value = convert(item as Node, reading);
    if (value === undefined) continue;
    result.push(value);
    spans.push(spanOf(item as Node, reading));
  }
  reading.items.set(result, spans);
  return result;
}

function spanOf(node: Node | null | undefined, reading: Reading): Span {
  const range = node?.range;
  return range ? [reading.base + range[0], reading.base + range[1]] : [reading.base, reading.base];
}

function treeOf(value: Value, whole: Span, reading: Reading): Tree {
  const lookUp = (path: Path, which: keyof KeyPlace): Span => {
    let at: Value | undefined = value;
    let span = whole;
    for (const step of path) {
      if (typeof at !== 'object') return span;
      const next: Span | undefined = Array.isArray(at)
        ? reading.items.get(at)?.[Number(step)]
        : reading.keys.get(at)?.get(String(step))?.[which];
      if (!next) return which === 'key' ? span : headOf(span, reading);
      span = next;
      at = Array.isArray(at) ? at[Number(step)] : at[String(step)];
    }
    return span;
  };
  return {
    value,
    placeOf: (path) => reading.source.place(...trimmed(lookUp(path, 'value'), reading)),
    keyPlaceOf: (path) => reading.source.place(...trimmed(lookUp(path, 'key'), reading)),
    drop: (path) => dropFrom(value, path, reading),
  };
}

/** A block's span runs to the start of the next line; what is underlined should not. */
function trimmed([start, end]: Span, reading: Reading): Span {
  const text = reading.source.text.slice(start, end);
  return [start, start + text.trimEnd().length];
}

/** The first line of a span: where a field is missing, the entry it is missing from is shown by its first line. */
function headOf([start, end]: Span, reading: Reading): Span {
  const newline = reading.source.text.indexOf('\n', start);
  return [start, newline === -1 ? end : Math.min(end, newline)];
}

function dropFrom(root: Value, path: Path, reading: Reading): void {
  let at: Value | undefined = root;
  for (const step of path.slice(0, -1)) {
    if (typeof at !== 'object') return;
    at = Array.isArray(at) ? at[Number(step)] : at[String(step)];
  }
  const last = path.at(-1);
  if (typeof at !== 'object' || last === undefined) return;
  if (Array.isArray(at)) {
    at.splice(Number(last), 1);
    reading.items.get(at)?.splice(Number(last), 1);
  } else {
    delete at[String(last)];
  }
}
