import type { Root } from 'mdast';
import { visit } from 'unist-util-visit';

/** Turns the links of notes (`part:`, `bag:`, `session:` …) into relative addresses, knowing nothing of a journal. */
export function remarkPlainLinks(): (tree: Root) => void {
  return (tree) => {
    visit(tree, 'link', (link) => {
      const [, scheme, id] = /^(part|bag|item|session|consumable):(.+)$/.exec(link.url) ?? [];
      if (scheme !== undefined) link.url = scheme === 'session' ? `./${id}.html` : `../${scheme}s/${id}.html`;
    });
  };
}
