/** What may be written where one is: fields, the words they take, and the names of things with what they are called. */
import { type CompletionItem, CompletionItemKind } from 'vscode-languageserver';
import type * as z from 'zod';
import type { Sort } from '../../journal/diagnostics/diagnostic.ts';
import { fieldsAt, isByName, isList, type Kind, kindAt, kindWithin } from '../../journal/read/schema-at.ts';
import type { SourceText } from '../../journal/read/source/text.ts';
import { factsOf } from '../../journal/schema/facts.ts';
import { LINK_SCHEMES } from '../../journal/values/link.ts';
import { inWords } from '../schemas/json-schema.ts';
import { type Thing, typedName } from '../things.ts';
import type { State } from '../workspace.ts';
import { type Cursor, cursorIn } from './cursor.ts';
import { yamlOf } from './fields.ts';
import { offsetAt, rangeOf, type Spot } from './ranges.ts';

/** One thing to write, before it is known where. */
interface Choice {
  readonly label: string;
  readonly kind: CompletionItemKind;
  readonly detail?: string;
  readonly documentation?: string;
  readonly put?: string;
}

export function completionsAt(state: State, { path, position }: Spot): CompletionItem[] {
  const text = state.textOf(path);
  if (text === null) return [];
  const at = offsetAt(text, position);
  const yaml = yamlOf(text);
  if (yaml === null || at < yaml.span[0] || at > yaml.span[1]) return path.endsWith('.md') ? inProse(state, text, at) : [];
  const cursor = cursorIn(text.text, yaml.span, at);
  if (cursor === null) return [];
  return placed(text, cursor.start, at, choicesAt(state, yaml.schema, cursor));
}

/** Each takes the place of what has been written from `start` on. A name is also found by the words of what it is called. */
function placed(text: SourceText, start: number, at: number, choices: readonly Choice[]): CompletionItem[] {
  const range = rangeOf(text.place(start, at));
  return choices.map(({ put, ...choice }, n) => ({
    ...choice,
    filterText: `${choice.label} ${choice.detail ?? ''}`.trim(),
    sortText: String(n).padStart(5, '0'),
    textEdit: { range, newText: put ?? choice.label },
  }));
}

function choicesAt(state: State, schema: z.ZodType, { path, isName, entry }: Cursor): Choice[] {
  const group = kindAt(schema, path.slice(0, -1));
  if (isName && isByName(group)) {
    const { keys = [] } = factsOf(group);
    return namesOf(state, keys).map((choice) => ({ ...choice, put: `${choice.label}: ` }));
  }
  const fields = fieldsAt(schema, path.slice(0, -1));
  if (isName && fields.length > 0) return fieldsOf(schema, path, fields, entry);
  // A line of a list of texts begins as a field would.
  const kind = isName ? group : kindAt(schema, path);
  return valuesOf(state, isList(kind) ? kindWithin(kind, 0) : kind, entry);
}

function fieldsOf(schema: z.ZodType, path: Cursor['path'], fields: readonly string[], entry: Cursor['entry']): Choice[] {
  return fields
    .filter((name) => !(name in entry))
    .map((label) => {
      const kind = kindAt(schema, [...path.slice(0, -1), label]);
      const detail = detailOf(isList(kind) ? kindWithin(kind, 0) : kind);
      return { label, kind: CompletionItemKind.Field, put: `${label}: `, ...(detail !== null && { detail }) };
    });
}

function detailOf(kind: Kind): string | null {
  const facts = factsOf(kind);
  return facts.words?.join(', ') ?? inWords(facts);
}

function valuesOf(state: State, kind: Kind, entry: Cursor['entry']): Choice[] {
  const { words, names } = factsOf(kind);
  if (words !== undefined) return words.map((label) => ({ label, kind: CompletionItemKind.EnumMember }));
  return names === undefined ? [] : namesOf(state, typeof names === 'function' ? names(entry) : names);
}

/** Things of these sorts, in the order of the sorts. Where nothing but a bag can stand it is its number alone. */
function namesOf({ things, record }: State, sorts: readonly Sort[]): Choice[] {
  const isPosition = ({ id }: Thing) => record?.journal.parts.get(id)?.makesPosition === true;
  const has = (sort: Sort) => things.filter((one) => (sort === 'position' ? one.sort === 'part' && isPosition(one) : one.sort === sort));
  const only = sorts.length === 1;
  return sorts.flatMap((sort) => has(sort).map((one) => choiceOf(one, only ? one.id : typedName(one))));
}

function choiceOf({ name, now }: Thing, label: string): Choice {
  return { label, kind: CompletionItemKind.Reference, ...(name !== label && { detail: name }), ...(now !== '' && { documentation: now }) };
}

/** Links of the prose: what may be named, and after the colon its names. */
function inProse(state: State, text: SourceText, at: number): CompletionItem[] {
  const line = text.text.slice(text.text.lastIndexOf('\n', at - 1) + 1, at);
  const [, begun] = /\]\(<?([a-z]*)$/.exec(line) ?? [];
  if (begun !== undefined) {
    const schemes = LINK_SCHEMES.map((scheme) => ({ label: `${scheme}:`, kind: CompletionItemKind.Keyword }));
    return placed(text, at - begun.length, at, schemes);
  }
  const [, word, written = ''] = /(?:\]\(<?|<|href\s*=\s*["'])([a-z]+):([^\s)>"']*)$/.exec(line) ?? [];
  const scheme = LINK_SCHEMES.find((each) => each === word);
  return scheme === undefined ? [] : placed(text, at - written.length, at, namesOf(state, [scheme]));
}
