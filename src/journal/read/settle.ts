/** What becomes of values that a schema does not take: renamed, stood in for, or taken out. */
import type * as z from 'zod';
import type { IssueParams } from '../schema/fields.ts';
import { fieldMeant } from './field-meant.ts';
import { fieldsAt, isDecisiveAt, standInAt } from './schema-at.ts';
import type { Path, Tree } from './source/tree.ts';

export type Issue = z.core.$ZodIssue;

/** Texts for fields of the top without which nothing could be read; with one in place the rest still is. */
export type StandIns = Readonly<Record<string, string>>;

/** Where fields belong whose names are misspelt here. */
export function meantFields(issue: Issue, schema: z.ZodType, tree: Tree): Path[] {
  if (issue.code !== 'unrecognized_keys') return [];
  return issue.keys.flatMap((key) => {
    const meant = meantField(key, issue.path, schema, tree);
    return meant === null ? [] : [[...issue.path, meant]];
  });
}

/** The field that a name nobody knows was meant for, when that is not there. */
function meantField(key: string, path: Path, schema: z.ZodType, tree: Tree): string | null {
  const meant = fieldMeant(key, fieldsAt(schema, path));
  return meant === null || valueAt(tree, [...path, meant]) !== undefined ? null : meant;
}

export function same(a: Path, b: Path): boolean {
  return a.length === b.length && a.every((step, n) => step === b[n]);
}

/** Deals with every issue, the last in the file first so that indexes stay right. @returns whether reading again may help */
export function settle(issues: readonly Issue[], schema: z.ZodType, tree: Tree, standIns: StandIns, doubtful: Path[]): boolean {
  const drops: Path[] = [];
  for (const issue of issues) {
    if (issue.code === 'unrecognized_keys') {
      for (const key of issue.keys) {
        const meant = meantField(key, issue.path, schema, tree);
        if (meant === null) drops.push([...issue.path, key]);
        else tree.rename([...issue.path, key], meant);
      }
    } else if (!asMeantFor(issue, tree) && !stoodIn(issue, schema, tree, standIns, doubtful)) {
      drops.push(isMissing(issue, tree) ? issue.path.slice(0, -1) : issue.path);
    }
  }
  if (drops.some((path) => path.length === 0)) return false;
  for (const path of lastFirst(drops)) tree.drop(written(tree, path));
  return true;
}

/** Puts what a value was most likely meant for in its place. */
function asMeantFor(issue: Issue, tree: Tree): boolean {
  const { meant } = issue.code === 'custom' ? (issue.params as unknown as IssueParams) : { meant: null };
  return typeof meant === 'string' && tree.supply(written(tree, issue.path), meant);
}

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
  if (standIn === undefined || !isDecisiveAt(schema, field)) return false;
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

export function isMissing(issue: Issue, tree: Tree): boolean {
  return issue.path.length > 0 && valueAt(tree, issue.path) === undefined;
}

export function valueAt(tree: Tree, path: Path): unknown {
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

/** A path may run past a value that stood for a list of one; what is written is the value itself. */
function written(tree: Tree, path: Path): Path {
  let depth = path.length;
  while (depth > 1 && typeof valueAt(tree, path.slice(0, depth - 1)) !== 'object') depth--;
  return path.slice(0, depth);
}
