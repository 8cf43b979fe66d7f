/**
 * The notes and catalogues as they go on with the vehicle: each as it was written, but for the fields `private` that the
 * copy does not have. Nothing else is touched: not a comment, not a blank. Pure.
 */
import { isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap } from 'yaml';
import type { Journal } from '../journal/model.ts';
import { parsedYaml } from '../journal/read/source/parsed-yaml.ts';

/** A file of the journal, as text. */
export interface NoteFile {
  readonly path: string;
  readonly text: string;
}

/** A field that could not be taken out without touching what is none of its business. */
export class NotCleaned extends Error {}

/**
 * @param whole the journal that the files make
 * @param copy the same, without some of its private matter
 * @throws NotCleaned
 */
export function keepersNotes(files: readonly NoteFile[], whole: Journal, copy: Journal): readonly NoteFile[] {
  const notes = new Set(
    whole.sessions.flatMap((session, n) => (session.private !== null && copy.sessions[n]?.private === null ? [session.file] : [])),
  );
  const parts = new Map<string, Set<string>>();
  for (const [id, part] of whole.parts) {
    if (part.private === null || copy.parts.get(id)?.private !== null) continue;
    parts.set(part.place.file, (parts.get(part.place.file) ?? new Set()).add(id));
  }
  return files.map(({ path, text }) => {
    const ids = parts.get(path);
    if (notes.has(path)) return { path, text: cleanedNote(path, text) };
    return ids === undefined ? { path, text } : { path, text: cleanedCatalogue(path, text, ids) };
  });
}

const FRONT = /^(\uFEFF?---[ \t]*\r?\n)([\s\S]*?^)---[ \t]*(?:\r?\n|$)/m;

function cleanedNote(path: string, text: string): string {
  const found = FRONT.exec(text);
  const [, open = '', yaml = ''] = found?.index === 0 ? found : [];
  const map = parsedYaml(yaml, {}).contents;
  const cut = isMap(map) ? cutOf(map, yaml) : null;
  if (cut === null) throw new NotCleaned(path);
  return without(text, [{ start: open.length + cut.start, end: open.length + cut.end }]);
}

function cleanedCatalogue(path: string, text: string, ids: ReadonlySet<string>): string {
  const { contents } = parsedYaml(text, {});
  const entries = isSeq(contents) ? contents.items : [contents];
  const cuts = entries.flatMap((entry) => {
    if (!isMap(entry) || !ids.has(String(scalarOf(entry, 'id')))) return [];
    const cut = cutOf(entry, text);
    return cut === null ? [] : [cut];
  });
  if (cuts.length !== ids.size) throw new NotCleaned(path);
  return without(text, cuts);
}

interface Cut {
  readonly start: number;
  readonly end: number;
}

function without(text: string, cuts: readonly Cut[]): string {
  return cuts.toSorted((a, b) => b.start - a.start).reduce((left, { start, end }) => left.slice(0, start) + left.slice(end), text);
}

function pairOf(map: YAMLMap, name: string): Pair | undefined {
  return map.items.find(({ key }) => isScalar(key) && String(key.value).toLowerCase() === name);
}

function scalarOf(map: YAMLMap, name: string): unknown {
  const value = pairOf(map, name)?.value;
  return isScalar(value) ? value.value : null;
}

/** From the name of the field to the end of its value, with the comma or the lines that are then left over. */
function cutOf(map: YAMLMap, text: string): Cut | null {
  const pair = pairOf(map, 'private');
  const key = (pair?.key as Node | undefined)?.range;
  const value = (pair?.value as Node | null | undefined)?.range;
  if (!key || !value) return null;
  return map.flow ? inBraces(text, key[0], value[1]) : onLines(text, key[0], value[1]);
}

function inBraces(text: string, start: number, end: number): Cut {
  const after = /^\s*,[ \t]*/.exec(text.slice(end));
  if (after) return { start, end: end + after[0].length };
  const before = /,\s*$/.exec(text.slice(0, start));
  return { start: start - (before?.[0].length ?? 0), end };
}

/** Whole lines; of an entry that begins with the field (`- private: …`) its dash stays with the next one. */
function onLines(text: string, start: number, end: number): Cut {
  const rest = /^[ \t]*(?:#[^\n]*)?(?:\r?\n|$)/.exec(text.slice(end));
  // The value of a block ends behind its last line already.
  const until = text[end - 1] === '\n' ? end : end + (rest?.[0].length ?? 0);
  const line = text.lastIndexOf('\n', start - 1) + 1;
  if (text.slice(line, start).trim() === '') return { start: line, end: until };
  const indent = /^[ \t]*/.exec(text.slice(until))?.[0].length ?? 0;
  return { start, end: until + indent };
}
