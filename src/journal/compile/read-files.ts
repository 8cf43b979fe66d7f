/** Source files → understood YAML and cut notes, each problem with its place. */
import type * as z from 'zod';
import { diagnostic, startOf } from '../diagnostics/diagnostic.ts';
import { readProse } from '../prose.ts';
import { type ConsumableSource, consumablesSchema, type PartSource, partsSchema } from '../schema/catalogues.ts';
import { type JournalSource, journalSchema } from '../schema/journal.ts';
import { sessionSchema } from '../schema/session.ts';
import { understand } from '../schema/understand.ts';
import { cutFrontMatter } from '../source/front-matter.ts';
import { quickTree } from '../source/quick-yaml.ts';
import type { SourceFile, Sources } from '../source/sources.ts';
import { decode, type SourceText } from '../source/text.ts';
import type { Tree } from '../source/tree.ts';
import { readYaml } from '../source/yaml.ts';
import type { Reporter } from './context.ts';
import type { PartsFile } from './parts.ts';
import type { NoteSource } from './session.ts';

export interface Understood<T> {
  readonly value: T;
  readonly tree: Tree;
}

/** The files of a journal as far as they were understood. */
export interface ReadJournal {
  readonly journal: Understood<JournalSource> | null;
  readonly consumables: Understood<Record<string, ConsumableSource>> | null;
  readonly parts: readonly PartsFile[];
  readonly notes: readonly NoteSource[];
}

/** Reads every file; a note or catalogue that is beyond reading is reported and left out. */
export function readFiles(sources: Sources, out: Reporter): ReadJournal {
  let journal: ReadJournal['journal'] = null;
  let consumables: ReadJournal['consumables'] = null;
  const parts: PartsFile[] = [];
  const notes: NoteSource[] = [];
  for (const file of sources.files) {
    const { text, diagnostics } = decode(file);
    out.diagnostics.push(...diagnostics);
    if (text === null) continue;
    if (file.path === 'journal.yaml') journal = readCatalogue(text, journalSchema, 'fields', out);
    else if (file.path === 'consumables.yaml') consumables = readCatalogue(text, consumablesSchema, 'fields', out);
    else if (file.path.startsWith('parts/')) parts.push(...readParts(file, text, out));
    else notes.push(...readNote(text, out));
  }
  if (!sources.files.some((file) => file.path === 'journal.yaml')) out.diagnostics.push(noJournal());
  return { journal, consumables, parts, notes };
}

function noJournal() {
  return diagnostic('A101', startOf('journal.yaml'), 'There is no journal.yaml in this folder.', {
    hint: 'Name the journal folder with --content DIR, or make one with `asfound init DIR`.',
  });
}

function readCatalogue<T extends z.ZodType>(source: SourceText, schema: T, top: 'fields' | 'list', out: Reporter) {
  return readSpan(source, { start: 0, end: source.text.length }, schema, top, out);
}

/** Sound YAML goes the fast way; with the first doubt it is read by the exact reader, which has words for every slip. */
function readSpan<T extends z.ZodType>(
  source: SourceText,
  { start, end }: { readonly start: number; readonly end: number },
  schema: T,
  top: 'fields' | 'list',
  out: Reporter,
): Understood<z.output<T>> | null {
  const tree = quickTree(source, start, end, top) ?? exactTree(source, start, end, top, out);
  if (tree === null) return null;
  const understood = understand(schema, tree);
  out.diagnostics.push(...understood.diagnostics);
  return understood.value === null ? null : { value: understood.value, tree };
}

function exactTree(source: SourceText, start: number, end: number, top: 'fields' | 'list', out: Reporter): Tree | null {
  const { tree, diagnostics } = readYaml(source, start, end, top);
  out.diagnostics.push(...diagnostics);
  return tree;
}

function readParts(file: SourceFile, text: SourceText, out: Reporter): PartsFile[] {
  const read = readCatalogue(text, partsSchema, 'list', out);
  if (read === null) return [];
  return [
    { file: file.path, subsystem: file.path.slice('parts/'.length, -'.yaml'.length), parts: read.value as PartSource[], tree: read.tree },
  ];
}

/** `sessions/2031-03-12-front-brakes/index.md` and `sessions/2031-03-12-front-brakes.md` make the same id. */
export function sessionIdOf(path: string): string {
  return path
    .slice('sessions/'.length)
    .replace(/(?:\/index)?\.md$/, '')
    .replaceAll('/', '-');
}

function readNote(text: SourceText, out: Reporter): NoteSource[] {
  const cut = cutFrontMatter(text);
  if ('code' in cut) {
    out.diagnostics.push(cut);
    return [];
  }
  const prose = readProse(text, cut.body.start, cut.body.end);
  const read = readSpan(text, cut.yaml, sessionSchema, 'fields', out);
  if (read === null) return [];
  const body = text.text.slice(cut.body.start, cut.body.end);
  return [{ id: sessionIdOf(text.file), file: text.file, source: read.value, tree: read.tree, prose, body }];
}
