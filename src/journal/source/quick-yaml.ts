/**
 * The fast way through sound YAML. A reader without positions gives the values in a tenth of the time; where they
 * are written is worked out by the exact reader, only when somebody asks. What the fast reader cannot take, or what
 * might be a slip, is left to the exact one.
 */
import { FAILSAFE_SCHEMA, load } from 'js-yaml';
import type { Place } from '../model.ts';
import type { SourceText } from './text.ts';
import { type Path, readYaml, type Tree, type Value } from './yaml.ts';

/** Anchors, aliases, tags, tabs, bare marks and document marks: rare, and the exact reader has words for them. */
const UNUSUAL = /(?:^|[\s[{,:-])[&*!%@`]|\t|^(?:---|\.\.\.)|(?:^|[\s[{,:-])[?:](?=\s|$)/m;

/**
 * @returns the tree of the YAML between two offsets, or null when the exact reader should look
 */
export function quickTree(source: SourceText, start: number, end: number, expects: 'fields' | 'list'): Tree | null {
  const value = quickValue(source.text.slice(start, end));
  if (value === null || Array.isArray(value) !== (expects === 'list')) return null;
  let known: Tree | null = null;
  const exact = (): Tree => {
    known ??= readYaml(source, start, end, expects).tree;
    if (known === null) throw new Error(`${source.file}: two readers of YAML disagree`);
    return known;
  };
  return {
    value,
    placeOf: (path) => placeWhenAsked(() => exact().placeOf(path)),
    keyPlaceOf: (path) => placeWhenAsked(() => exact().keyPlaceOf(path)),
    drop: (path: Path) => exact().drop(path),
  };
}

/** The values, all scalars as text; null when there is anything to look at twice. */
export function quickValue(text: string): Value | null {
  if (UNUSUAL.test(text)) return null;
  try {
    const value = load(text, { schema: FAILSAFE_SCHEMA }) as Value;
    return isWhole(value) && typeof value === 'object' ? value : null;
  } catch {
    return null;
  }
}

/** An empty value is a field left empty, or half of a slip. */
function isWhole(value: Value): boolean {
  if (typeof value === 'string') return value !== '';
  if (typeof value !== 'object' || value === null) return false;
  return Object.values(value).every(isWhole);
}

function placeWhenAsked(make: () => Place): Place {
  let known: Place | null = null;
  const place = (): Place => {
    known ??= make();
    return known;
  };
  return {
    get file() {
      return place().file;
    },
    get line() {
      return place().line;
    },
    get column() {
      return place().column;
    },
    get endLine() {
      return place().endLine;
    },
    get endColumn() {
      return place().endColumn;
    },
  };
}
