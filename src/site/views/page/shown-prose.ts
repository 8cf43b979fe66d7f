/** The prose of a note without what its page does not show, for lists and search. */
import { SKIP, visit } from 'unist-util-visit';
import { noteMarkdown } from '../../../journal/read/note-markdown.ts';

/**
 * Leaves out HTML, its comments and attributes with it, and the definitions of links, which some use as comments.
 * Words between tags stay.
 *
 * @returns Markdown
 */
export function shownProse(body: string): string {
  if (!body.includes('<') && !body.includes(']:')) return body;
  const parts: string[] = [];
  let shown = 0;
  let hidden: string | null = null;
  visit(noteMarkdown().parse(body), (node) => {
    if (node.type !== 'html' && node.type !== 'definition') return undefined;
    const from = node.position?.start.offset ?? 0;
    if (hidden === null) parts.push(body.slice(shown, from));
    if (node.type === 'html') {
      const found: { readonly words: string; readonly open: string | null } = wordsOf(node.value, hidden);
      parts.push(found.words);
      hidden = found.open;
    }
    shown = node.position?.end.offset ?? body.length;
    return SKIP;
  });
  return hidden === null ? parts.join('') + body.slice(shown) : parts.join('');
}

/** Elements whose content is no prose. */
const UNSHOWN = /^(script|style|template|title|textarea|iframe|noscript|xmp|svg|math)$/;
const TAG = /^<(\/?)([a-zA-Z][\w-]*)(?:[^"'>]|"[^"]*"|'[^']*')*>/;

/**
 * The words between tags.
 *
 * @param inside the name of an element whose content is no prose, when one is open
 * @returns what is shown, and which such element is open at the end
 */
function wordsOf(html: string, inside: string | null): { words: string; open: string | null } {
  let words = '';
  let open = inside;
  for (let at = 0; at < html.length; ) {
    const next = html.indexOf('<', at);
    if (open === null) words += html.slice(at, next === -1 ? html.length : next);
    if (next === -1) break;
    const tag = TAG.exec(html.slice(next, next + LONGEST_TAG));
    const [all, slash, name = ''] = tag ?? [];
    const lower = name.toLowerCase();
    if (open === null && slash === '' && UNSHOWN.test(lower)) open = lower;
    else if (slash === '/' && lower === open) open = null;
    at = all === undefined ? endOfComment(html, next) : next + all.length;
    if (open === null) words += ' ';
  }
  return { words, open };
}

/** Longer ones are left out up to the next angle. */
const LONGEST_TAG = 10_000;

/** Of a comment, a declaration or an instruction; what is not closed goes on to the end. */
function endOfComment(html: string, at: number): number {
  const close = html.startsWith('<!--', at) ? '-->' : '>';
  const end = html.indexOf(close, at + (close === '-->' ? 4 : 1));
  return end === -1 ? html.length : end + close.length;
}
