/** The text of a note to what its form shows, and what the form says back into the text. */
import { isMap, type YAMLMap } from 'yaml';
import { proseAlone } from '../journal/read/prose-alone.ts';
import { sessionIdOf } from '../journal/read/read-files.ts';
import { cutFrontMatter } from '../journal/read/source/front-matter.ts';
import { parsedYaml } from '../journal/read/source/parsed-yaml.ts';
import { sourceText } from '../journal/read/source/text.ts';
import type { FormField } from './form.ts';
import { asForm, fits, sameValue, type Value, type Values, withoutEmpty } from './values.ts';
import { edited, editTop, NotByForm } from './yaml-edits.ts';

/** What a note says. */
export interface NoteSays {
  readonly fields: Values;
  readonly prose: string;
}

/** A note cut in three: what opens the fields, the fields as YAML, and what comes behind them. */
interface Cut {
  readonly head: string;
  readonly yaml: string;
  readonly foot: string;
  readonly prose: string;
  readonly alone: Values | null;
}

/**
 * @param path of the note in the journal: one without fields is given its day by its name
 * @param form the fields that the form has
 * @returns null for a note that the form cannot show as it stands; its text can still be shown
 */
export function readNote(text: string, path: string, form: readonly FormField[]): NoteSays | null {
  const cut = cutNote(text, path, form);
  if (cut === null) return null;
  if (cut.alone) return { fields: cut.alone, prose: withLineFeeds(cut.prose) };
  const values = valuesOf(cut.yaml);
  const fields = values && asForm(values, form);
  return fields && fits(fields, form) ? { fields, prose: withLineFeeds(cut.prose).replace(/^\n+/, '') } : null;
}

/**
 * Writes what the form says into the text of a note.
 *
 * @throws NotByForm where that would touch what the form says nothing of
 */
export function changeNote(text: string, path: string, form: readonly FormField[], says: NoteSays): string {
  const cut = cutNote(text, path, form);
  const before = readNote(text, path, form);
  if (cut === null || before === null) throw new NotByForm();
  const after = withoutEmpty(says.fields);
  const changed = cut.alone ? withFields(cut, after, form) : changedFields(cut, before.fields, after, form);
  const prose = proseOf(cut, before, says.prose);
  const written = inItsLineEnds(text, changed) + prose;
  const read = readNote(written, path, form);
  if (read === null || !sameValue(withoutEmpty(read.fields), after) || read.prose.trimEnd() !== says.prose.trimEnd()) throw new NotByForm();
  return written;
}

/** The text of a note that is not there yet. */
export function newNote(form: readonly FormField[], { fields, prose }: NoteSays): string {
  const head = `---\n${fieldsAlone(withoutEmpty(fields), form)}---\n`;
  const words = withLineFeeds(prose).trim();
  return words === '' ? head : `${head}\n${words}\n`;
}

function fieldsAlone(values: Values, form: readonly FormField[]): string {
  const editing = { text: '', edits: [] };
  const ordered = Object.fromEntries(form.flatMap(({ name }) => (values[name] === undefined ? [] : [[name, values[name]]])));
  editTop(editing, null, {}, ordered as Values, form);
  return edited(editing);
}

function cutNote(text: string, path: string, form: readonly FormField[]): Cut | null {
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const mark = text.slice(0, text.length - body.length);
  const alone = proseAlone(body, sessionIdOf(path), new Set(form.map(({ name }) => name)));
  if (alone) {
    const { date, title, start } = alone;
    return { head: mark, yaml: '', foot: body.slice(0, start), prose: body.slice(start), alone: { date, title } };
  }
  const { cut, diagnostics } = cutFrontMatter(sourceText(path, body));
  if (cut === null || diagnostics.length > 0) return null;
  const { yaml, body: behind } = cut;
  const blank = /^(?:[ \t]*\r?\n)*/.exec(body.slice(behind.start))?.[0].length ?? 0;
  return {
    head: mark + body.slice(0, yaml.start),
    yaml: body.slice(yaml.start, yaml.end),
    foot: body.slice(yaml.end, behind.start + blank),
    prose: body.slice(behind.start + blank),
    alone: null,
  };
}

/** A note without fields stays one while its day and its title are said by its name and its words; else its line of title is a field. */
function withFields(cut: Cut, after: Values, form: readonly FormField[]): string {
  if (sameValue(cut.alone ?? {}, after)) return cut.head + cut.foot;
  return `${cut.head}---\n${fieldsAlone(after, form)}---\n`;
}

function changedFields(cut: Cut, before: Values, after: Values, form: readonly FormField[]): string {
  const document = parsedYaml(cut.yaml, PARSING);
  const editing = { text: cut.yaml, edits: [] };
  editTop(editing, isMap(document.contents) ? (document.contents as YAMLMap) : null, withoutEmpty(before), after, form);
  const changed = edited(editing);
  return cut.head + changed + (changed === '' || changed.endsWith('\n') ? '' : '\n') + cut.foot;
}

function proseOf(cut: Cut, before: NoteSays, prose: string): string {
  const words = withLineFeeds(prose);
  if (words.trimEnd() === before.prose.trimEnd()) return cut.prose;
  const end = words.trim() === '' ? '' : '\n';
  const text = `${words.trimEnd()}${end}`;
  return cut.prose.includes('\r\n') || cut.foot.includes('\r\n') ? text.replaceAll('\n', '\r\n') : text;
}

/** What was written anew ends its lines as the note does. */
function inItsLineEnds(text: string, changed: string): string {
  return /\r\n/.test(text) ? changed.replaceAll(/(?<!\r)\n/g, '\r\n') : changed;
}

const PARSING = { schema: 'failsafe', uniqueKeys: true, keepSourceTokens: false } as const;

function valuesOf(yaml: string): Values | null {
  const document = parsedYaml(yaml, PARSING);
  if (document.errors.length > 0 || document.warnings.length > 0) return null;
  if (document.contents === null) return {};
  if (!isMap(document.contents)) return null;
  return plain(document.toJS({ maxAliasCount: 0 })) as Values;
}

/** Nothing is the empty text. */
function plain(value: unknown): Value {
  if (Array.isArray(value)) return value.map(plain);
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([name, one]) => [name, plain(one)]));
  return value === null || value === undefined ? '' : String(value);
}

function withLineFeeds(text: string): string {
  return text.replaceAll('\r\n', '\n');
}
