/**
 * Every mention of every thing of a journal: in the catalogues, in the fields and the prose of the notes, and in the
 * drawings. Editors and the renaming of a thing go by them.
 */
import type { Place } from '../diagnostics/place.ts';
import { asMeant } from '../read/as-meant.ts';
import { FIELDS_OF_A_NOTE, kindOfFile, YAML_OF } from '../read/file-kinds.ts';
import { proseAlone } from '../read/prose-alone.ts';
import { sessionIdOf } from '../read/read-files.ts';
import { cutFrontMatter } from '../read/source/front-matter.ts';
import type { SourceFile, Sources } from '../read/source/sources.ts';
import { decode, type SourceText } from '../read/source/text.ts';
import type { Span } from '../read/source/tree.ts';
import { treeIn } from '../read/tree-in.ts';
import { GENERAL } from '../schema/words.ts';
import { keptIn, once } from '../values/once.ts';
import { namesInDrawing } from './drawn-names.ts';
import { namesInProse } from './prose-names.ts';
import type { Around, NamedSort, WrittenName } from './written-name.ts';
import { namesInYaml } from './yaml-names.ts';

/** One place where a thing is named. */
export interface Mention {
  readonly sort: NamedSort;
  /** The thing's own name: of a session its id, though its day is written. */
  readonly name: string;
  /** The thing comes into the journal here. */
  readonly brings: boolean;
  /** The name alone, without the marks around it. */
  readonly place: Place;
  readonly around: Around;
  /** Every sort of thing that may be meant, where the journal has the name for several; else none. */
  readonly either: readonly NamedSort[];
}

export interface Mentions {
  /** In the order of the files, and in each as it is written. */
  readonly all: readonly Mention[];
  /** Names that the journal has, by their sort. */
  readonly known: Known;
}

export type Known = ReadonlyMap<NamedSort, ReadonlySet<string>>;

/** Files with faults are looked through as far as they can be read. Of files that are the same objects as before nothing is read again. */
export function mentionsIn({ files }: Pick<Sources, 'files'>): Mentions {
  const written = files.flatMap(namesIn);
  const known = knownNames(files, written);
  const days = sessionsByDay(known.get('session') ?? new Set());
  const all = written.flatMap(({ sorts, name, ...rest }): Mention[] => {
    const [sort, ...others] = sorts.filter((each) => known.get(each)?.has(name));
    if (sort !== undefined) return [{ sort, name, ...rest, either: others.length === 0 ? [] : [sort, ...others] }];
    const session = sorts.includes('session') ? days.get(name) : undefined;
    return session ? [{ sort: 'session', name: session, ...rest, either: [] }] : [];
  });
  return { all, known };
}

/** The names in one file, each place once, as written. */
const namesIn = once((file: SourceFile): readonly WrittenName[] => {
  const { text } = decode(file);
  if (text === null) return [];
  const kind = kindOfFile(file.path);
  if (kind === 'drawing') return inOrder(namesInDrawing(text));
  if (kind !== 'note') return inOrder(inYaml(text, [0, text.text.length], kind));
  const { yaml, prose } = partsOf(text);
  return inOrder([...(yaml ? inYaml(text, yaml, 'note') : []), ...namesInProse(text, prose)]);
});

function inYaml(text: SourceText, [start, end]: Span, kind: keyof typeof YAML_OF): WrittenName[] {
  const { schema, top } = YAML_OF[kind];
  const { tree } = treeIn(text, { start, end }, schema, top);
  if (tree === null) return [];
  asMeant(tree, schema, []);
  return namesInYaml(tree, schema, text);
}

/** Where a note has its fields, if it has any, and its prose. */
function partsOf(text: SourceText): { readonly yaml: Span | null; readonly prose: Span } {
  const whole: Span = [0, text.text.length];
  if (proseAlone(text.text, sessionIdOf(text.file), FIELDS_OF_A_NOTE)) return { yaml: null, prose: whole };
  const { cut } = cutFrontMatter(text);
  if (cut === null) return { yaml: null, prose: whole };
  return { yaml: [cut.yaml.start, cut.yaml.end], prose: [cut.body.start, cut.body.end] };
}

function inOrder(names: readonly WrittenName[]): WrittenName[] {
  const byPlace = new Map(names.map((name) => [`${name.place.line}:${name.place.column}`, name]));
  return [...byPlace.values()].sort((a, b) => a.place.line - b.place.line || a.place.column - b.place.column);
}

/** What the files bring: entries of catalogues, fillings of bags, items that are opened, notes and catalogues by their files. */
function knownNames(files: readonly SourceFile[], written: readonly WrittenName[]): Known {
  const known = new Map<NamedSort, Set<string>>();
  const add = (sort: NamedSort, name: string) => keptIn(known, sort, () => new Set<string>()).add(name);
  for (const { sorts, name, brings } of written) if (brings && sorts[0]) add(sorts[0], name);
  for (const { path } of files) if (kindOfFile(path) === 'note') add('session', sessionIdOf(path));
  // A bag that was full at the start is filled by no note, and one that a part opened is described by none.
  for (const { sorts, name } of written) if (sorts[0] === 'bag') add('bag', name);
  add('subsystem', GENERAL);
  return known;
}

/** Days that only one session has. */
function sessionsByDay(sessions: ReadonlySet<string>): ReadonlyMap<string, string | null> {
  const days = new Map<string, string | null>();
  for (const id of sessions) days.set(id.slice(0, 10), days.has(id.slice(0, 10)) ? null : id);
  return days;
}
