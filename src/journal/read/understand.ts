/**
 * Reads values by a schema without giving up at the first fault: what is wrong is reported and taken out,
 * and the rest is read again, so that one slip does not hide the others or cost the whole note.
 */
import type * as z from 'zod';
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { SureRepair } from '../diagnostics/repair.ts';
import { factsOf } from '../schema/facts.ts';
import type { IssueParams } from '../schema/fields.ts';
import { asMeant } from './as-meant.ts';
import { fieldAsked } from './field-meant.ts';
import { fieldsAt, isList, isListOfGroups, isRequiredAt, type Kind, kindAt } from './schema-at.ts';
import { type Issue, isMissing, meantFields, type StandIns, same, settle, valueAt } from './settle.ts';
import type { Path, Tree } from './source/tree.ts';
import { type Read, withEntries } from './written-entry.ts';

/** Each round settles at least one value, so a sound file needs one round and a bad one a few. */
const MOST_ROUNDS = 12;

/**
 * @param schema what the values should be
 * @param tree the values; what could not be understood is dropped from it, so that paths into the result are paths into the tree
 * @returns what was understood (null when too little was), every problem with its place, and what may be written without asking
 */
export function understand<T extends z.ZodType>(
  schema: T,
  tree: Tree,
  standIns: StandIns = {},
): { value: Read<z.output<T>> | null; diagnostics: Diagnostic[]; repairs: readonly SureRepair[] } {
  const diagnostics: Diagnostic[] = [];
  const doubtful: Path[] = [];
  let result = schema.safeParse(tree.value);
  const repairs: SureRepair[] = [];
  if (!result.success && asMeant(tree, schema, repairs)) result = schema.safeParse(tree.value);
  for (let round = 0; round < MOST_ROUNDS; round++, result = schema.safeParse(tree.value)) {
    if (result.success) return { value: withEntries(result.data, tree, doubtful), diagnostics, repairs };
    const { issues } = result.error;
    const renamed = issues.flatMap((issue) => meantFields(issue, schema, tree));
    // What is missing after the first round was taken out for a fault that has been told.
    const told = issues.filter((issue) => !isMissing(issue, tree) || (round === 0 && !renamed.some((to) => same(to, issue.path))));
    for (const issue of told) diagnostics.push(...describe(issue, schema, tree));
    const left = issues.filter((issue) => !renamed.some((to) => same(to, issue.path)));
    if (!settle(left, schema, tree, standIns, doubtful)) break;
  }
  return { value: null, diagnostics, repairs };
}

function describe(issue: Issue, schema: z.ZodType, tree: Tree): Diagnostic[] {
  if (issue.code === 'unrecognized_keys') {
    const known = fieldsAt(schema, issue.path);
    return issue.keys.map((key) => unknownField(key, [...issue.path, key], known, inProse(key, issue.path, schema, tree), tree));
  }
  if (issue.code === 'custom') {
    const params = issue.params as unknown as IssueParams;
    return [diagnostic(params.code, tree.placeOf(issue.path), issue.message, { hint: params.hint })];
  }
  const name = String(issue.path.at(-1) ?? '');
  if (isMissing(issue, tree)) {
    return [
      diagnostic('A302', tree.placeOf(issue.path), `The field \`${name}\` is missing.`, {
        hint: missingHint(name, kindAt(schema, issue.path)),
      }),
    ];
  }
  return [diagnostic('A303', tree.placeOf(issue.path), messageOf(issue, tree), { hint: otherKindHint(issue, schema, name, tree) })];
}

const EXPECTED: Readonly<Record<string, string>> = {
  string: 'Text was expected',
  array: 'A list was expected (lines that begin with `- `)',
  object: 'Fields were expected (`name: value`)',
};

function messageOf(issue: Issue, tree: Tree): string {
  const found = kindOf(valueAt(tree, issue.path));
  if (issue.code === 'invalid_union' || issue.code === 'invalid_key') {
    return `\`${String(issue.path.at(-1) ?? '')}\` does not take ${found}.`;
  }
  const expected = issue.code === 'invalid_type' ? issue.expected : 'object';
  return `${EXPECTED[expected] ?? EXPECTED.object}, ${found} stands here.`;
}

function missingHint(name: string, kind: Kind): string {
  if (name === 'date') return 'Write the day of the work: `date: 2031-03-12`.';
  const { words, form } = factsOf(kind);
  if (words !== undefined) return `Add \`${name}: ${words[0]}\`, or another of ${words.map((word) => `\`${word}\``).join(', ')}.`;
  return `Add \`${name}: …\`${form === undefined ? '' : `, ${form}`}.`;
}

/** How a value of the kind that was expected is written. */
function otherKindHint(issue: Issue, schema: z.ZodType, name: string, tree: Tree): string {
  const { path } = issue;
  if (isListOfGroups(schema, path))
    return `Write each entry under \`${name}:\` on a line of its own: \`- { ${fieldsShown(schema, [...path, 0], valueAt(tree, path))} }\`.`;
  if (fieldsAt(schema, path).length > 0) return `Write \`{ ${fieldsShown(schema, path, valueAt(tree, path))} }\`.`;
  const { form } = factsOf(kindAt(schema, path));
  if (issue.code === 'invalid_type' && issue.expected === 'record') return `Write \`${name}\` with ${form ?? 'fields'}.`;
  return isList(kindAt(schema, path)) ? `Write \`${name}: [ … ]\`.` : 'Text with a colon or braces in it stands in double quotes.';
}

/** Fields that must be there, else the first one; what was written alone is most likely what the first of them says. */
function fieldsShown(schema: z.ZodType, path: Path, alone: unknown): string {
  const all = fieldsAt(schema, path);
  const needed = all.filter((field) => isRequiredAt(schema, [...path, field]));
  return (needed.length > 0 ? needed : all.slice(0, 1))
    .map((field, n) => `${field}: ${n === 0 && typeof alone === 'string' && alone !== '' ? alone : '…'}`)
    .join(', ');
}

/** What to write where a name that is no field's may be part of the text before it; null where none is. */
function inProse(key: string, path: Path, schema: z.ZodType, tree: Tree): string | null {
  const before = tree.before([...path, key]);
  if (before === null || !factsOf(kindAt(schema, [...path, before.name])).prose) return null;
  const quoted = before.text.includes('"') ? `'${before.text.replaceAll("'", "''")}'` : `"${before.text}"`;
  return `If it belongs to the text before it, put all of that in quotation marks: \`${before.name}: ${quoted}\`.`;
}

function unknownField(key: string, path: Path, known: readonly string[], text: string | null, tree: Tree): Diagnostic {
  const hint = fieldAsked(key, known) ?? text ?? `Take it out, or say it under one of ${known.map((each) => `\`${each}\``).join(', ')}.`;
  return diagnostic('A301', tree.keyPlaceOf(path), `There is no field \`${key}\` here.`, { hint });
}

/** Says in words what kind of value stands where another was expected. */
function kindOf(value: unknown): string {
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'string') return `\`${value.length > 40 ? `${value.slice(0, 40)}…` : value}\``;
  if (typeof value === 'object' && value !== null) return 'a group of fields';
  return 'nothing';
}
