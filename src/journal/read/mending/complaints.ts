/** What in a YAML document tells of a slip: the parser's own errors, and what it takes for sound and nobody means. */
import { type Document, isAlias, isMap, isPair, isScalar, type Node, type Pair, visit, type YAMLError } from 'yaml';

/** Something is wrong at an offset; the parser's error when it is one. */
export interface Complaint {
  readonly at: number;
  readonly error: YAMLError | null;
}

/** In file order. */
export function complaintsOf(document: Document, text: string): Complaint[] {
  const errors = [...document.errors, ...document.warnings].map((error) => ({ at: pastSpace(text, error.pos[0]), error }));
  const dots = /^\.\.\.[ \t\r]*$/m.exec(text);
  const odd: Complaint[] = dots ? [{ at: dots.index, error: null }] : [];
  const { contents } = document;
  if (isScalar(contents) && contents.type === 'PLAIN' && contents.range) odd.push({ at: contents.range[0], error: null });
  visit(document, {
    Pair: (_key, pair, path) => {
      const at = oddPair(pair, path.at(-1) as Node, text);
      if (at !== null) odd.push({ at, error: null });
    },
    Scalar: (_key, { type, range, value }) => {
      if (type !== 'PLAIN' || !range) return;
      const run = /(?:^|\s)(-(?=[A-Za-z{["']))/.exec(text.slice(range[0], range[1]));
      if (run && String(value).includes(' -')) odd.push({ at: range[0] + run.index, error: null });
    },
  });
  return [...errors, ...odd].sort((a, b) => a.at - b.at);
}

/** A complaint about the end of a line is about what stands on the next. */
export function pastSpace(text: string, offset: number): number {
  const next = text.slice(offset).search(/\S/);
  return next === -1 ? offset : offset + next;
}

/** A name without a value inside braces, a comment where a value was meant, a name that is none. */
function oddPair(pair: Pair, parent: Node, text: string): number | null {
  const key = pair.key as Node | null;
  const range = isScalar(key) ? key.range : null;
  if (!range || !isMap(parent) || isPair(parent)) return null;
  const [start, end] = range;
  if (parent.flow === true && pair.value === null) return start === end ? null : start;
  const name = text.slice(start, end);
  if (/^[–—•*−(]|[\u00a0\u2000-\u200b]|:$/u.test(name)) return start;
  const empty = isScalar(pair.value) && !isAlias(pair.value) && pair.value.value === '' && pair.value.type === 'PLAIN';
  return (empty || pair.value === null) && /^:[ \t]*#\S/.test(text.slice(end)) ? start : null;
}
