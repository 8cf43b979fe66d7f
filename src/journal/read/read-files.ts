/** Source files → understood YAML and cut notes, each problem with its place. */
import type * as z from 'zod';
import { type Diagnostic, diagnostic, startOf } from '../diagnostics/diagnostic.ts';
import type { Place } from '../diagnostics/place.ts';
import { ID, nearestId } from '../schema/fields.ts';
import { sessionSchema } from '../schema/session.ts';
import { readDate } from '../values/date.ts';
import { keptIn } from '../values/once.ts';

import { readDrawing } from './drawing.ts';
import { FIELDS_OF_A_NOTE, type FileKind, kindOfFile, YAML_OF } from './file-kinds.ts';
import type { IdentityFile, NoteSource, PartsFile, ReadJournal, StatementFile, Understood } from './journal-source.ts';

import { catalogueOf, withAcquired } from './made-parts.ts';
import { readProse } from './prose.ts';
import { type ProseAlone, proseAlone } from './prose-alone.ts';
import { controlByNumber, tooMuchOf } from './prose-limits.ts';
import { type Reporter, reporter } from './reporter.ts';
import type { StandIns } from './settle.ts';
import { cutFrontMatter } from './source/front-matter.ts';
import type { SourceFile, Sources } from './source/sources.ts';
import { controlFound, decode, type SourceText } from './source/text.ts';
import { treeOf } from './source/tree.ts';
import { treeIn } from './tree-in.ts';
import { understand } from './understand.ts';
import { type Read, withEntries } from './written-entry.ts';

/** What files were read as, each by that very file: it depends on nothing else. */
export type KnownFiles = WeakMap<SourceFile, ReadFile>;

interface ReadFile {
  /** What it brings into the journal. */
  readonly brings: Partial<ReadJournal>;
  readonly told: Pick<Reporter, 'diagnostics' | 'repairs'>;
}

/**
 * Reads every file; a note or catalogue that is beyond reading is reported and left out.
 *
 * @param known files that were read before; those that are read now are added. They take memory for as long as their files do
 */
export function readFiles(sources: Sources, out: Reporter, known: KnownFiles = new WeakMap()): ReadJournal {
  const read = sources.files.map((file) => keptIn(known, file, () => readFile(file)));
  for (const { told } of read) {
    out.diagnostics.push(...told.diagnostics);
    out.repairs.push(...told.repairs);
  }
  if (!sources.files.some((file) => file.path === 'journal.yaml')) out.diagnostics.push(noJournal());
  const brought = read.map(({ brings }) => brings);
  const parts = brought.flatMap((each) => each.parts ?? []);
  const notes = brought.flatMap((each) => each.notes ?? []);
  return {
    journal: brought.find(({ journal }) => journal)?.journal ?? null,
    consumables: brought.find(({ consumables }) => consumables)?.consumables ?? null,
    identity: brought.flatMap(({ identity }) => identity ?? []),
    drawings: brought.flatMap(({ drawings }) => drawings ?? []),
    statements: brought.flatMap(({ statements }) => statements ?? []),
    parts: [...parts, ...catalogueOf(notes, parts)],
    notes: withAcquired(notes, parts),
  };
}

function readFile(file: SourceFile): ReadFile {
  const told = reporter();
  const { text, diagnostics } = decode(file);
  told.diagnostics.push(...diagnostics);
  const kind = kindOfFile(file.path);
  if (text === null || (MAY_BE_BARE.includes(kind) && isBare(text.text))) return { brings: {}, told };
  return { brings: READERS[kind](text, told), told };
}

/** By what a file holds. */
const READERS: Readonly<Record<FileKind, (text: SourceText, out: Reporter) => Partial<ReadJournal>>> = {
  journal: (text, out) => ({ journal: readCatalogue(text, YAML_OF.journal, out) }),
  consumables: (text, out) => ({ consumables: readCatalogue(text, YAML_OF.consumables, out) }),
  parts: (text, out) => ({ parts: readParts(text, out) }),
  identity: (text, out) => ({ identity: readIdentity(text, out) }),
  drawing: (text, out) => ({ drawings: [readDrawing(text, out)].filter((one) => one !== null) }),
  statement: (text, out) => ({ statements: readStatement(text, out) }),
  note: (text, out) => ({ notes: readNote(text, out) }),
};

/** Catalogues that a journal may be without. */
const MAY_BE_BARE: readonly FileKind[] = ['consumables', 'parts', 'identity'];

/** Nothing but comments: the catalogue has no entry yet. */
function isBare(text: string): boolean {
  return text.split(/\r\n|[\r\n]/).every((line) => /^\s*(?:#|$)/.test(line));
}

function noJournal() {
  return diagnostic('A101', startOf('journal.yaml'), 'There is no journal.yaml in this folder.', {
    hint: 'Name the journal folder with --content DIR, or make one with `asfound init DIR`.',
  });
}

function readCatalogue<T extends z.ZodType>(
  source: SourceText,
  of: { readonly schema: T; readonly top: 'fields' | 'list' },
  out: Reporter,
) {
  return readSpan(source, { start: 0, end: source.text.length }, of.schema, of.top, out);
}

function readSpan<T extends z.ZodType>(
  source: SourceText,
  { start, end }: { readonly start: number; readonly end: number },
  schema: T,
  top: 'fields' | 'list',
  out: Reporter,
  standIns: StandIns = {},
): Understood<Read<z.output<T>>> | null {
  const { tree, diagnostics, mended, repairs } = treeIn(source, { start, end }, schema, top);
  out.diagnostics.push(...diagnostics);
  out.repairs.push(...repairs);
  if (tree === null) return null;
  const understood = understand(schema, tree, standIns);
  out.repairs.push(...understood.repairs);
  // Where the YAML is at fault, what it makes of the value is only an echo, and so is a field that is missing on its line.
  const told = new Set([...diagnostics.map(({ place }) => place), ...mended].map(startOfPlace));
  const lines = new Set(diagnostics.map(({ place }) => place.line));
  const isEcho = (each: Diagnostic) => told.has(startOfPlace(each.place)) || (each.code === 'A302' && lines.has(each.place.line));
  out.diagnostics.push(...understood.diagnostics.filter((each) => !isEcho(each)));
  const all = new Set([...told, ...understood.diagnostics.map(({ place }) => startOfPlace(place))]);
  return understood.value === null ? null : { value: understood.value, tree, told: all };
}

const startOfPlace = ({ line, column }: Place): string => `${line}:${column}`;

function readParts(text: SourceText, out: Reporter): PartsFile[] {
  const read = readCatalogue(text, YAML_OF.parts, out);
  if (read === null) return [];
  return [{ file: text.file, subsystem: text.file.slice('parts/'.length, -'.yaml'.length), parts: read.value, tree: read.tree }];
}

function readIdentity(text: SourceText, out: Reporter): IdentityFile[] {
  const read = readCatalogue(text, YAML_OF.identity, out);
  return read === null ? [] : [{ ...read, id: text.file.slice('identity/'.length, -'.yaml'.length) }];
}

function readStatement(text: SourceText, out: Reporter): StatementFile[] {
  const read = readCatalogue(text, YAML_OF.statement, out);
  return read === null ? [] : [{ file: text.file, value: read.value, tree: read.tree }];
}

/** `sessions/2031-03-12-front-brakes/index.md` and `sessions/2031-03-12-front-brakes.md` make the same id. */
export function sessionIdOf(path: string): string {
  return path
    .slice('sessions/'.length)
    .replace(/(?:\/index)?\.md$/, '')
    .replaceAll('/', '-');
}

/** Pages are named for ids, so a name that makes none is told, and read on as it is. */
function checkName(path: string, id: string, out: Reporter): void {
  if (ID.test(id)) return;
  const [folder, ...steps] = path.replace(/(?:\/index)?\.md$/, '').split('/');
  const named = steps.map(nearestId);
  const better = `${[folder, ...named].join('/')}${path.endsWith('/index.md') ? '/index.md' : '.md'}`;
  const rule = 'Names of notes are lower-case letters, digits and single hyphens.';
  out.report('A311', startOf(path), `The name of this note makes the session id \`${id}\`, which is no id.`, {
    hint: named.includes(null) ? rule : `Name it \`${better}\`. ${rule}`,
  });
}

/** The day of a note that nothing gives a day; no vehicle arrived so early. */
const UNDATED = '0001-01-01';

/** A note whose title or date is at fault is still looked through, by what its name says. */
function standInsFor(id: string): StandIns {
  const date = readDate(id.slice(0, 10));
  return { title: id, date: date.ok ? date.value : UNDATED };
}

function readNote(text: SourceText, out: Reporter): NoteSource[] {
  const id = sessionIdOf(text.file);
  const alone = proseAlone(text.text, id, FIELDS_OF_A_NOTE);
  if (alone) return [noteOfProse(text, id, alone, out)];
  const { cut, diagnostics, repairs } = cutFrontMatter(text);
  out.diagnostics.push(...diagnostics);
  out.repairs.push(...repairs);
  if (cut === null) return [];
  const written = proseOf(text, cut.body, out);
  checkName(text.file, id, out);
  const read = readSpan(text, cut.yaml, sessionSchema, 'fields', out, standInsFor(id));
  if (read === null) return [];
  return [
    {
      id,
      file: text.file,
      source: read.value,
      tree: read.tree,
      ...written,
      told: read.told,
      undated: read.value.date === UNDATED,
    },
  ];
}

/** Prose that is too much is told, and passed over: not even to be shown should it be parsed. */
function proseOf(
  text: SourceText,
  { start, end }: { readonly start: number; readonly end: number },
  out: Reporter,
): Pick<NoteSource, 'prose' | 'body' | 'bodyLine'> {
  const body = text.text.slice(start, end);
  const bodyLine = text.place(start, start).line;
  const tooMuch = tooMuchOf(body);
  const control = controlByNumber(body);
  if (control !== null)
    out.diagnostics.push(controlFound(control.code, text.place(start + control.at, start + control.at + control.length)));
  if (tooMuch === null) return { prose: readProse(text, start, end), body, bodyLine };
  const hint = 'Keep what is long as a file beside the note, and link it.';
  out.report('A916', text.place(start + tooMuch.at, start + tooMuch.at), tooMuch.message, { hint });
  return { prose: { links: [], others: [], images: [] }, body: '', bodyLine };
}

function noteOfProse(text: SourceText, id: string, { date, title, start }: ProseAlone, out: Reporter): NoteSource {
  checkName(text.file, id, out);
  const firstLine = text.text.search(/\n|$/);
  const tree = treeOf(text, { date, title }, { start: 0, end: firstLine, key: null, inside: new Map() });
  const source = withEntries(sessionSchema.parse({ date, title }), tree, []);
  const end = text.text.length;
  return {
    id,
    file: text.file,
    source,
    tree,
    ...proseOf(text, { start, end }, out),
    told: new Set(),
    undated: false,
  };
}
