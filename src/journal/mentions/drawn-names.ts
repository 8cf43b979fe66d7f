/** Names in a drawing: shapes that stand for a position, and what in the same file points at such a shape. */
import type { SourceText } from '../read/source/text.ts';
import type { WrittenName } from './written-name.ts';

const TAG = /<[a-z](?:[^>"']|"[^"]*"|'[^']*')*>/gi;
/** What a position is surely meant by, and the id that stands for one where there is nothing surer. */
const DATA_PART = /\sdata-part\s*=\s*(["'])(.*?)\1/i;
const ID = /\sid\s*=\s*(["'])(.*?)\1/i;
/** What points at an id: `href="#x"`, `url(#x)`, and a rule of a style. */
const POINTER = /(?:href\s*=\s*["']#|url\(\s*["']?#)([^"')\s]+)|#([\w-]+)(?=[^{}<>]*\{)/g;

export function namesInDrawing(source: SourceText): WrittenName[] {
  // What stands in a comment draws nothing, and keeps its length.
  const text = source.text.replace(/<!--[\s\S]*?-->/g, (comment) => ' '.repeat(comment.length));
  const found: WrittenName[] = [];
  const ids = new Set<string>();
  const take = (name: string, at: number): void => {
    const place = source.place(at, at + name.length);
    found.push({ sorts: ['part'], name, brings: false, place, around: 'attribute' });
  };
  for (const { 0: tag, index } of text.matchAll(TAG)) {
    const certain = DATA_PART.exec(tag);
    const named = certain ?? ID.exec(tag);
    if (named === null || /^<svg\b/i.test(tag)) continue;
    const [all, mark = '', name = ''] = named;
    take(name, index + named.index + all.length - mark.length - name.length);
    if (certain === null) ids.add(name);
  }
  for (const { 0: all, 1: address, 2: rule, index } of text.matchAll(POINTER)) {
    const name = address ?? rule ?? '';
    if (ids.has(name)) take(name, index + all.lastIndexOf(name));
  }
  return found;
}
