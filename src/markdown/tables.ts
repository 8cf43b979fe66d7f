import type { Element, Root } from 'hast';
import { toString as textOf } from 'hast-util-to-string';
import { SKIP, visit } from 'unist-util-visit';

/**
 * Tables scroll inside themselves, reachable by keyboard; alignment is a class, and a heading that says nothing is a plain cell.
 *
 *     | Stud | Torque |
 *     | --- | ---: |
 *     | 1 | 60 |
 *
 *     <div class="scroll" role="region" aria-label="Table: Stud, Torque" tabindex="0"><table>…<td class="right">60</td>…</table></div>
 */
export function tables(): (tree: Root) => void {
  return (tree) => {
    visit(tree, 'element', (node, index, parent) => {
      if (node.tagName === 'th' && node.children.length === 0) node.tagName = 'td';
      if (node.tagName === 'th' || node.tagName === 'td') align(node);
      if (node.tagName !== 'table' || index === undefined || !parent) return;
      parent.children[index] = {
        type: 'element',
        tagName: 'div',
        properties: { className: ['scroll'], role: 'region', ariaLabel: label(node), tabIndex: 0 },
        children: [node],
      };
    });
  };
}

function align(cell: Element): void {
  const { align: side, ...rest } = cell.properties;
  if (side !== undefined) cell.properties = side === 'left' ? rest : { ...rest, className: [String(side)] };
}

function label(table: Element): string {
  const headings: string[] = [];
  visit(table, 'element', (node) => {
    if (node.tagName === 'th') headings.push(textOf(node).trim());
    return node.tagName === 'tbody' ? SKIP : true;
  });
  const named = headings.filter((heading) => heading !== '');
  return named.length === 0 ? 'Table' : `Table: ${named.join(', ')}`;
}
