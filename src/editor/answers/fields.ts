/** The fields of a file and where they are written, before anything is understood. */
import type * as z from 'zod';
import type { Place } from '../../journal/diagnostics/place.ts';
import { kindOfFile, YAML_OF } from '../../journal/read/file-kinds.ts';
import { cutFrontMatter } from '../../journal/read/source/front-matter.ts';
import type { SourceText } from '../../journal/read/source/text.ts';
import type { Path, Span, Tree, Value } from '../../journal/read/source/tree.ts';
import { treeIn } from '../../journal/read/tree-in.ts';

/** Where the YAML of a file stands, and what it is read by. */
export interface Yaml {
  readonly span: Span;
  readonly schema: z.ZodType;
  readonly top: 'fields' | 'list';
}

/** Null for a drawing, and for a note without fields. One that is only begun goes to the end of the file. */
export function yamlOf(text: SourceText): Yaml | null {
  const kind = kindOfFile(text.file);
  if (kind === 'drawing') return null;
  if (kind !== 'note') return { ...YAML_OF[kind], span: [0, text.text.length] };
  const { cut } = cutFrontMatter(text);
  if (cut !== null) return { ...YAML_OF.note, span: [cut.yaml.start, cut.yaml.end] };
  const open = /^---[ \t]*\r?\n/.exec(text.text);
  return open && { ...YAML_OF.note, span: [open[0].length, text.text.length] };
}

export function treeOfFile(text: SourceText): (Yaml & { readonly tree: Tree }) | null {
  const yaml = yamlOf(text);
  if (yaml === null) return null;
  const { tree } = treeIn(text, { start: yaml.span[0], end: yaml.span[1] }, yaml.schema, yaml.top);
  return tree && { ...yaml, tree };
}

export interface PlacedField {
  readonly schema: z.ZodType;
  readonly path: Path;
  readonly value: Value;
  readonly place: Place;
  /** Where its name is written. */
  readonly keyPlace: Place;
}

/** The first field of a file that is meant, outer ones first. */
export function placedIn(text: SourceText, isMeant: (field: PlacedField) => boolean): PlacedField | null {
  const read = treeOfFile(text);
  if (read === null) return null;
  const look = (value: Value, path: Path): PlacedField | null => {
    const field = { schema: read.schema, path, value, place: read.tree.placeOf(path), keyPlace: read.tree.keyPlaceOf(path) };
    if (path.length > 0 && isMeant(field)) return field;
    for (const [step, held] of stepsIn(value)) {
      const found = look(held, [...path, step]);
      if (found !== null) return found;
    }
    return null;
  };
  return look(read.tree.value, []);
}

export function stepsIn(value: Value): [string | number, Value][] {
  if (typeof value === 'string') return [];
  return Array.isArray(value) ? [...value.entries()] : Object.entries(value);
}
