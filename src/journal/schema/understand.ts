/**
 * Reads values by a schema without giving up at the first fault: what is wrong is reported and taken out,
 * and the rest is read again, so that one slip does not hide the others or cost the whole note.
 */
import type * as z from 'zod';
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import { didYouMean, nearest } from '../diagnostics/nearest.ts';
import type { Path, Tree } from '../source/tree.ts';
import { type IssueParams, kindOf } from './fields.ts';
import { fieldsAt, isOptionalAt, standInAt } from './schema-at.ts';

/** Each round settles at least one value, so a sound file needs one round and a bad one a few. */
const MOST_ROUNDS = 12;

/** Texts for fields of the top without which nothing could be read; with one in place the rest still is. */
export type StandIns = Readonly<Record<string, string>>;

/** Entries whose fault is in a field that says what they mean: looked through for what else is wrong, and not believed. */
const DOUBTFUL = new WeakSet<object>();

/** Whether an entry must not be counted with. */
export function isDoubtful(entry: unknown): boolean {
  return typeof entry === 'object' && entry !== null && DOUBTFUL.has(entry);
}

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
  const doubtful: Path[] = [];
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const result = schema.safeParse(tree.value);
    if (result.success) {
      for (const path of doubtful) doubt(result.data, path);
      return { value: result.data, diagnostics };
    }
    const { issues } = result.error;
    const renamed = issues.flatMap((issue) => meantFields(issue, schema, tree));
    // What is missing after the first round was taken out for a fault that has been told.
    const told = issues.filter((issue) => !isMissing(issue, tree) || (round === 0 && !renamed.some((to) => same(to, issue.path))));
    for (const issue of told) diagnostics.push(...describe(issue, schema, tree));
    const left = issues.filter((issue) => !renamed.some((to) => same(to, issue.path)));
    if (!settle(left, schema, tree, standIns, doubtful)) break;
  }
  return { value: null, diagnostics };
}

type Issue = z.core.$ZodIssue;

/** Where fields belong whose names are misspelt here. */
function meantFields(issue: Issue, schema: z.ZodType, tree: Tree): Path[] {
  if (issue.code !== 'unrecognized_keys') return [];
  return issue.keys.flatMap((key) => {
    const meant = meantField(key, issue.path, schema, tree);
    return meant === null ? [] : [[...issue.path, meant]];
  });
}

/** The field that a name nobody knows was meant for, when that is not there. */
function meantField(key: string, path: Path, schema: z.ZodType, tree: Tree): string | null {
  const meant = nearest(key, fieldsAt(schema, path));
  return meant === null || valueAt(tree, [...path, meant]) !== undefined ? null : meant;
}

function same(a: Path, b: Path): boolean {
  return a.length === b.length && a.every((step, n) => step === b[n]);
}

/** Deals with every issue, the last in the file first so that indexes stay right. @returns whether reading again may help */
function settle(issues: readonly Issue[], schema: z.ZodType, tree: Tree, standIns: StandIns, doubtful: Path[]): boolean {
  const drops: Path[] = [];
  for (const issue of issues) {
    if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys) {
        const meant = meantField(key, issue.path, schema, tree);
        if (meant === null) drops.push([...issue.path, key]);
        else tree.rename([...issue.path, key], meant);
      }
    } else if (!stoodIn(issue, schema, tree, standIns, doubtful)) {
      drops.push(isMissing(issue, tree) ? issue.path.slice(0, -1) : issue.path);
    }
  }
  if (drops.some((path) => path.length === 0)) return false;
  for (const path of lastFirst(drops)) dropDeepest(tree, path);
  return true;
}

/** Fields that say what an entry means. A fault in one casts doubt on the entry, which without it would say something else. */
const DECISIVE: ReadonlySet<PropertyKey> = new Set(['did', 'count', 'verdict', 'amount', 'lines', 'for', 'split']);

/** Puts something in the place of a value that an entry cannot do without, and doubts the entry. */
function stoodIn(issue: Issue, schema: z.ZodType, tree: Tree, standIns: StandIns, doubtful: Path[]): boolean {
  const [top] = issue.path;
  const missing = isMissing(issue, tree);
  const given = issue.path.length === 1 ? standIns[String(top)] : undefined;
  if (missing && given !== undefined) return tree.supply(issue.path, given);
  const entry = entryOf(issue.path);
  if (entry === null) return false;
  const field = issue.path.slice(0, entry.length + 1);
  const standIn = standInAt(schema, field);
  if (standIn === undefined || (isOptionalAt(schema, field) && !DECISIVE.has(field.at(-1) as PropertyKey))) return false;
  doubtful.push(entry);
  return tree.supply(field, standIn);
}

/** The entry of a list, or of a group by name, that a path leads into. */
function entryOf(path: Path): Path | null {
  for (let n = path.length - 1; n > 0; n -= 1) {
    if (typeof path[n - 1] === 'number' && typeof path[n] !== 'number') return path.slice(0, n);
  }
  return null;
}

function doubt(value: unknown, path: Path): void {
  let at: unknown = value;
  for (const step of path) {
    at = (at as Record<PropertyKey, unknown> | undefined)?.[step];
    if (typeof at === 'object' && at !== null && !Array.isArray(at)) DOUBTFUL.add(at);
  }
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
  const found = kindOf(valueAt(tree, issue.path));
  if (issue.code === 'invalid_union' || issue.code === 'invalid_key') {
    return `\`${String(issue.path.at(-1) ?? '')}\` does not take ${found}.`;
  }
  if (!issue.message.startsWith('Invalid input')) return issue.message;
  const list = issue.code === 'invalid_type' && issue.expected === 'array';
  return list
    ? `A list was expected (lines that begin with \`- \`), ${found} stands here.`
    : `Fields were expected (\`name: value\`), ${found} stands here.`;
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
