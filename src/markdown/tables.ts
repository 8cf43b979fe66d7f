import type { Element, ElementContent, Root } from 'hast';
import { eachElement } from './each-element.ts';

/**
 * Tables scroll inside themselves, reachable by keyboard, and alignment is a class.
 *
 *     | Stud | Torque |
 *     | --- | ---: |
 *     | 1 | 60 |
 *
 *     <div class="scroll" role="region" aria-label="Table: Stud, Torque" tabindex="0"><table>…<td class="right">60</td>…</table></div>
 */
export function tables(): (tree: Root) => void {
  return (tree) => {
    eachElement(tree, (node, index, parent) => {
      if (node.tagName === 'th' || node.tagName === 'td') align(node);
      if (node.tagName !== 'table' || isWrapped(parent)) return undefined;
      parent.children[index] = {
        type: 'element',
        tagName: 'div',
        properties: { className: ['scroll'], role: 'region', ariaLabel: label(node), tabIndex: 0 },
        children: [node],
      };
      return undefined;
    });
  };
}

function isWrapped(parent: Root | Element): boolean {
  return parent.type === 'element' && parent.properties.role === 'region';
}

function align(cell: Element): void {
  const { align: side, ...rest } = cell.properties;
  if (side !== undefined) cell.properties = side === 'left' ? rest : { ...rest, className: [String(side)] };
}

function label(table: Element): string {
  const headings: string[] = [];
  eachElement(table, (node, index) => {
    if (node.tagName === 'th') headings.push(textOf(node).trim());
    return node.tagName === 'tbody' ? index + 1 : undefined;
  });
  const named = headings.filter((heading) => heading !== '');
  return named.length === 0 ? 'Table' : `Table: ${named.join(', ')}`;
}

function textOf(node: ElementContent): string {
  if (node.type === 'text') return node.value;
  return node.type === 'element' ? node.children.map(textOf).join('') : '';
}
