/**
 * The elements of a page that this program rendered, as places in its text: enough to know where a long page may be
 * cut. It reads what is well-formed and was written here, and is no parser of HTML as such.
 */

export interface Element {
  readonly name: string;
  /** The tag that begins it. */
  readonly open: string;
  readonly from: number;
  /** Behind the tag that ends it. */
  to: number;
  readonly children: Element[];
}

const VOID = new Set(['area', 'base', 'br', 'col', 'embed', 'hr', 'img', 'input', 'link', 'meta', 'source', 'track', 'wbr']);
const TAG = /<(\/?)([a-zA-Z][\w-]*)((?:"[^"]*"|'[^']*'|[^>"'])*)>/g;

/**
 * @param html of a whole page
 * @param from where an element begins
 * @returns it and what is in it; null where its tags do not match
 */
export function elementAt(html: string, from: number): Element | null {
  const open: Element[] = [];
  TAG.lastIndex = from;
  for (let tag = TAG.exec(html); tag !== null; tag = TAG.exec(html)) {
    const [text, end = '', name = '', rest = ''] = tag;
    if (end === '') {
      const element: Element = { name, open: text, from: tag.index, to: TAG.lastIndex, children: [] };
      open.at(-1)?.children.push(element);
      if (!VOID.has(name) && !rest.endsWith('/')) open.push(element);
      continue;
    }
    const last = open.pop();
    if (last === undefined || last.name !== name) return null;
    last.to = TAG.lastIndex;
    if (open.length === 0) return last;
  }
  return null;
}

/** Every id in a piece of HTML, in order. */
export function idsIn(html: string): string[] {
  return [...html.matchAll(/\sid="([^"]+)"/g)].map(([, id = '']) => id);
}

/** What a piece of HTML says, without its tags; characters stay escaped. */
export function wordsOf(html: string): string {
  return html
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();
}
