/** What `check` says of a draft, each at the field it is about. */
import { isMap, isScalar, isSeq, type Node } from 'yaml';
import { type Diagnostic, inFileOrder } from '../journal/diagnostics/diagnostic.ts';
import { cutFrontMatter } from '../journal/read/source/front-matter.ts';
import { parsedYaml } from '../journal/read/source/parsed-yaml.ts';
import { sourceText } from '../journal/read/source/text.ts';
import type { DraftChecked } from './desk.ts';
import type { FormField } from './form.ts';
import { meantName } from './values.ts';

export interface FieldProblem {
  readonly severity: Diagnostic['severity'];
  readonly code: string;
  readonly message: string;
  readonly hint: string | null;
  /** The way to the field: names, and numbers from 0. Empty for the note as a whole; null for another file, or the prose. */
  readonly way: readonly (string | number)[] | null;
  /** Another file that it is in, where it is not the note. */
  readonly file: string | null;
}

/** @param text the note as it was checked */
export function problemsByField(
  { diagnostics, unplaced }: DraftChecked,
  path: string,
  text: string,
  form: readonly FormField[],
): FieldProblem[] {
  const wayAt = wayFinder(path, text, form);
  const told = [...diagnostics].sort(inFileOrder).map(({ severity, code, message, hint, place }) => ({
    severity,
    code,
    message,
    hint,
    way: place.file === path ? wayAt(place.line, place.column) : null,
    file: place.file === path ? null : place.file,
  }));
  const lying = unplaced.map(({ line, column }) => ({ ...NOWHERE, way: [...(wayAt(line, column) ?? []).slice(0, 2), 'to'] }));
  return [...told, ...lying];
}

/** No fault, so `check` has no word of it. */
const NOWHERE = {
  severity: 'warning',
  code: 'unplaced',
  message: 'Where it lies now is not said: it counts as in stores, unplaced.',
  hint: 'A store or a bag.',
  file: null,
} as const;

function wayFinder(path: string, text: string, form: readonly FormField[]): (line: number, column: number) => (string | number)[] | null {
  const { cut } = cutFrontMatter(sourceText(path, text));
  if (cut === null) return () => [];
  const document = parsedYaml(text.slice(cut.yaml.start, cut.yaml.end), { schema: 'failsafe' });
  const starts = [0, ...[...text.matchAll(/\n/g)].map(({ index }) => index + 1)];
  return (line, column) => {
    const at = (starts[line - 1] ?? 0) + column - 1;
    if (at >= cut.body.start) return null;
    return at < cut.yaml.start ? [] : wayTo(document.contents, at - cut.yaml.start, form);
  };
}

function wayTo(node: Node | null, at: number, form: readonly FormField[]): (string | number)[] {
  if (isSeq(node)) {
    const item = node.items.findLastIndex((one) => startOf(one as Node) <= at);
    if (item !== -1) return [item, ...wayTo(node.items[item] as Node, at, form)];
  }
  if (!isMap(node)) return [];
  const pair = node.items.findLast(({ key }) => startOf(key as Node) <= at);
  if (!pair || !isScalar(pair.key)) return [];
  const name = meantName(String(pair.key.value), form);
  const field = form.find((one) => one.name === name);
  return [name, ...wayTo(pair.value as Node | null, at, field?.fields ?? [])];
}

function startOf(node: Node | null): number {
  return node?.range?.[0] ?? Number.POSITIVE_INFINITY;
}
