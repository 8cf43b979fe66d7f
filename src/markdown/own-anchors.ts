import type { Root } from 'hast';
import { visit } from 'unist-util-visit';
import { ID_PREFIX } from './safe-html.ts';

/**
 * Cleaning puts a prefix before every id of a note, so that none meets one of the page. Links inside
 * the note, footnotes among them, follow.
 *
 *     text[^1]     <a href="#note-fn-1" id="note-fnref-1" …>1</a>
 */
export function ownAnchors(): (tree: Root) => void {
  return (tree) => {
    const ids = new Set<string>();
    visit(tree, 'element', ({ properties }) => {
      if (typeof properties.id === 'string') ids.add(properties.id);
    });
    if (ids.size === 0) return;
    visit(tree, 'element', ({ properties }) => {
      const { href } = properties;
      const own = typeof href === 'string' && href.startsWith('#') ? ID_PREFIX + href.slice(1) : '';
      if (ids.has(own)) properties.href = `#${own}`;
    });
  };
}
