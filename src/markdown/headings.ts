import type { Element, Root } from 'hast';
import { visit } from 'unist-util-visit';

const HEADING = /^h[1-6]$/;

/**
 * The highest heading of a note comes under the title of its page, which is the only `h1`; the others keep
 * their distance from it.
 *
 *     # What came off     <h2>What came off</h2>
 *     ## Nearside         <h3>Nearside</h3>
 */
export function headings(): (tree: Root) => void {
  return (tree) => {
    const found: Element[] = [];
    visit(tree, 'element', (node) => {
      if (HEADING.test(node.tagName) && !isFootnoteLabel(node)) found.push(node);
    });
    const highest = Math.min(...found.map(levelOf));
    for (const heading of found) heading.tagName = `h${Math.min(6, levelOf(heading) - highest + 2)}`;
  };
}

function levelOf(heading: Element): number {
  return Number(heading.tagName.slice(1));
}

/** The heading over the footnotes is made, not written, and is in its place already. */
function isFootnoteLabel(node: Element): boolean {
  return Array.isArray(node.properties.className) && node.properties.className.includes('sr-only');
}
