/** Where in the YAML one is writing, though it is not finished there. */
import { isMap, isPair, isScalar, isSeq, type Node, type Pair, type Scalar, visit } from 'yaml';
import { parsedYaml } from '../../journal/read/source/parsed-yaml.ts';
import type { Path, Span } from '../../journal/read/source/tree.ts';

export interface Cursor {
  /** Of the value that is being written; of a name, with the name as its last step. */
  readonly path: Path;
  /** The name of a field is being written, not a value. */
  readonly isName: boolean;
  /** What has been written of it. */
  readonly written: string;
  /** The offset of its beginning. */
  readonly start: number;
  /** The group that it is in, as far as it is written. */
  readonly entry: Readonly<Record<string, unknown>>;
}

/** Stands where one writes; no journal has such a word. */
const HERE = 'hereonewrites';

/** @returns null where no value and no name could be written */
export function cursorIn(text: string, [start]: Span, at: number): Cursor | null {
  const before = text.slice(start, at);
  const { doc, offset } = closed(before);
  let found: Cursor | null = null;
  visit(doc, {
    Scalar(key, node, path) {
      const cursor = cursorAt(node, key === 'key', path);
      if (cursor === null) return undefined;
      found = { ...cursor, start: start + cursor.start - offset };
      return visit.BREAK;
    },
  });
  return found;
}

/** What stands before the cursor as YAML that is whole: a word where one writes, and after it whatever is still open. */
function closed(before: string) {
  const open = openMarks(before);
  const line = before.slice(before.lastIndexOf('\n') + 1);
  const startsField = open === '' && /^\s*(?:-\s+)*[\w-]*$/.test(line);
  const whole = `${before}${HERE}${open === '' ? (startsField ? ':' : '') : open}`;
  return { doc: parsedYaml(whole, { schema: 'failsafe', strict: false, uniqueKeys: false, logLevel: 'silent' }), offset: 0 };
}

const CLOSING: Readonly<Record<string, string>> = { '{': '}', '[': ']' };

/** The marks that would close what is open at the end of a text, in their order. */
function openMarks(text: string): string {
  let open = '';
  let quote = '';
  let last = '\n';
  for (const [n, sign] of [...text].entries()) {
    if (sign === '\n' && open === '') quote = '';
    if (quote !== '') {
      if (sign === quote) quote = '';
    } else if (sign === '#' && /\s/.test(text[n - 1] ?? '\n')) {
      return openMarks(text.slice(0, n) + text.slice(n).replace(/^[^\n]*/, (comment) => ' '.repeat(comment.length)));
    } else if ((sign === '"' || sign === "'") && /[\n:,[{-]/.test(last)) quote = sign;
    else if (sign in CLOSING && (open !== '' || /[\n:-]/.test(last))) open = `${CLOSING[sign]}${open}`;
    else if (sign === open[0]) open = open.slice(1);
    if (!/[ \t\r]/.test(sign)) last = sign;
  }
  return `${quote}${open}`;
}

function cursorAt(node: Scalar, isName: boolean, ancestors: readonly (Node | Pair | unknown)[]): Cursor | null {
  const value = String(node.value);
  const at = value.indexOf(HERE);
  if (at === -1 || !node.range) return null;
  const quoted = node.type === 'QUOTE_DOUBLE' || node.type === 'QUOTE_SINGLE';
  const group = ancestors.findLast(isMap);
  const entry = (group?.toJSON() ?? {}) as Record<string, unknown>;
  return { path: pathOf(node, ancestors), isName, written: value.slice(0, at), start: node.range[0] + (quoted ? 1 : 0), entry };
}

function pathOf(node: Node, ancestors: readonly unknown[]): Path {
  const chain = [...ancestors, node];
  return chain.flatMap((each, n): (string | number)[] => {
    if (isPair(each)) return isScalar(each.key) ? [String(each.key.value)] : [];
    const next = chain[n + 1];
    return isSeq(each) && next !== undefined ? [each.items.indexOf(next as Node)] : [];
  });
}
