/**
 * Reads values by a schema without giving up at the first fault: what is wrong is reported and taken out,
 * and the rest is read again, so that one slip does not hide the others or cost the whole note.
 */
import type * as z from 'zod';
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import { didYouMean } from '../diagnostics/nearest.ts';
import type { Path, Tree } from '../source/tree.ts';
import { type IssueParams, kindOf } from './fields.ts';

/** Each round takes at least one value out, so a sound file needs one round and a bad one a few. */
const MOST_ROUNDS = 12;

/** Texts for fields of the top without which nothing could be read; with one in place the rest still is. */
export type StandIns = Readonly<Record<string, string>>;

/**
 * @param schema what the values should be
 * @param tree the values; what could not be understood is dropped from it, so that paths into the result are paths into the tree
 * @returns what was understood (null when too little was), and every problem with its place
 */
export function understand<T extends z.ZodType>(
  schema: T,
  tree: Tree,
  standIns: StandIns = {},
): { value: z.output<T> | null; diagnostics: Diagnostic[] } {
  const diagnostics: Diagnostic[] = [];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const result = schema.safeParse(tree.value);
    if (result.success) return { value: result.data, diagnostics };
    // What is missing after the first round was taken out for a fault that has been told.
    const told = result.error.issues.filter((issue) => round === 0 || !isMissing(issue, tree));
    for (const issue of told) diagnostics.push(...describe(issue, schema, tree));
    const supplied = supplyMissing(result.error.issues, tree, standIns);
    const left = result.error.issues.filter((issue) => !supplied.includes(issue));
    if (!dropAll(left, schema, tree)) break;
  }
  return { value: null, diagnostics };
}

type Issue = z.core.$ZodIssue;

/** @returns the issues that are settled by a stand-in */
function supplyMissing(issues: readonly Issue[], tree: Tree, standIns: StandIns): readonly Issue[] {
  return issues.filter((issue) => {
    const text = issue.path.length === 1 && isMissing(issue, tree) ? standIns[String(issue.path[0])] : undefined;
    if (text !== undefined) tree.supply(String(issue.path[0]), text);
    return text !== undefined;
  });
}

function describe(issue: Issue, schema: z.ZodType, tree: Tree): Diagnostic[] {
  if (issue.code === 'unrecognized_keys') {
    const known = fieldsAt(schema, issue.path);
    return issue.keys.map((key) => unknownField(key, [...issue.path, key], known, tree));
  }
  if (issue.code === 'custom') {
    const params = issue.params as unknown as IssueParams;
    return [diagnostic(params.code, tree.placeOf(issue.path), issue.message, { hint: params.hint })];
  }
  const name = String(issue.path.at(-1) ?? '');
  if (isMissing(issue, tree)) {
    return [diagnostic('A302', tree.placeOf(issue.path), `The field \`${name}\` is missing.`, { hint: missingHint(name) })];
  }
  return [diagnostic('A303', tree.placeOf(issue.path), messageOf(issue, tree))];
}

function messageOf(issue: Issue, tree: Tree): string {
  if (issue.code === 'invalid_union' || issue.code === 'invalid_key') {
    return `\`${String(issue.path.at(-1) ?? '')}\` does not take ${kindOf(valueAt(tree, issue.path))}.`;
  }
  return issue.message;
}

function missingHint(name: string): string | null {
  return name === 'date' ? 'Write the day of the work: `date: 2031-03-12`.' : null;
}

function unknownField(key: string, path: Path, known: readonly string[], tree: Tree): Diagnostic {
  const hint = didYouMean(key, known);
  return diagnostic('A301', tree.keyPlaceOf(path), `There is no field \`${key}\` here.`, { hint });
}

function isMissing(issue: Issue, tree: Tree): boolean {
  return issue.path.length > 0 && valueAt(tree, issue.path) === undefined;
}

function valueAt(tree: Tree, path: Path): unknown {
  let at: unknown = tree.value;
  for (const step of path) {
    if (typeof at !== 'object' || at === null) return typeof step === 'number' ? at : undefined;
    at = (at as Record<PropertyKey, unknown>)[step];
  }
  return at;
}

/**
 * Takes the faulty values out. A faulty field that may be absent goes alone; one that must be there takes
 * its entry with it, at the next round, when it comes back as missing.
 */
function dropAll(issues: readonly Issue[], schema: z.ZodType, tree: Tree): boolean {
  const paths: Path[] = [];
  for (const issue of issues) {
    if (issue.code === 'unrecognized_keys') paths.push(...issue.keys.map((key) => [...issue.path, key]));
    else paths.push(isMissing(issue, tree) ? issue.path.slice(0, -1) : decided(issue.path));
  }
  const whole = paths.some((path) => path.length === 0);
  if (whole) return false;
  for (const path of lastFirst(paths)) dropDeepest(tree, path);
  return schema !== undefined;
}

/** Fields that say what an entry means. A fault in one takes the entry, which without it would say something else. */
const DECISIVE: ReadonlySet<PropertyKey> = new Set(['did', 'count', 'verdict', 'amount', 'lines']);

function decided(path: Path): Path {
  const at = path.findIndex((step, i) => i > 0 && DECISIVE.has(step) && typeof path[i - 1] === 'number');
  return at === -1 ? path : path.slice(0, at);
}

/** Later list items first, so that earlier indexes stay right; each path once. */
function lastFirst(paths: readonly Path[]): Path[] {
  const unique = new Map(paths.map((path) => [path.join('\u0000'), path]));
  return [...unique.values()].sort((a, b) => comparePaths(b, a));
}

function comparePaths(a: Path, b: Path): number {
  for (let i = 0; i < Math.min(a.length, b.length); i++) {
    const [x, y] = [a[i], b[i]];
    if (x === y) continue;
    if (typeof x === 'number' && typeof y === 'number') return x - y;
    return String(x) < String(y) ? -1 : 1;
  }
  return a.length - b.length;
}

/** A path may run past a value that stood for a list of one; what can be dropped is the value itself. */
function dropDeepest(tree: Tree, path: Path): void {
  let depth = path.length;
  while (depth > 1 && typeof valueAt(tree, path.slice(0, depth - 1)) !== 'object') depth--;
  tree.drop(path.slice(0, depth));
}

/** The field names a schema takes at a path. */
export function fieldsAt(schema: z.ZodType, path: Path): string[] {
  let at: z.core.$ZodType | undefined = schema;
  for (const step of path) {
    at = open(at);
    const def = at?._zod.def as Definition | undefined;
    if (def?.type === 'object') at = def.shape?.[String(step)];
    else if (def?.type === 'array') at = def.element;
    else if (def?.type === 'record') at = def.valueType;
    else return [];
  }
  const def = open(at)?._zod.def as Definition | undefined;
  return def?.type === 'object' ? Object.keys(def.shape ?? {}) : [];
}

interface Definition {
  readonly type: string;
  readonly shape?: Record<string, z.core.$ZodType>;
  readonly element?: z.core.$ZodType;
  readonly valueType?: z.core.$ZodType;
  readonly innerType?: z.core.$ZodType;
  readonly in?: z.core.$ZodType;
  readonly out?: z.core.$ZodType;
  readonly options?: readonly z.core.$ZodType[];
}

/** Looks through optional, preprocessed and alternative schemas to the one that holds fields. */
function open(schema: z.core.$ZodType | undefined): z.core.$ZodType | undefined {
  const def = schema?._zod.def as Definition | undefined;
  if (!def) return schema;
  if (def.innerType) return open(def.innerType);
  if (def.type === 'pipe') return open(def.out);
  if (def.type === 'union') return open(def.options?.at(-1));
  return schema;
}
