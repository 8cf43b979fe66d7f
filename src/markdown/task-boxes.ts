import type { Root } from 'hast';
import { visit } from 'unist-util-visit';

/**
 * A ticked box is a picture of a state, not a control: it is shown as text that can be read out.
 *
 *     - [x] Drained     <li class="task-list-item"><span class="box" role="img" aria-label="done">[x]</span> Drained</li>
 *     - [ ] Bled        <li class="task-list-item"><span class="box" role="img" aria-label="not done">[ ]</span> Bled</li>
 */
export function taskBoxes(): (tree: Root) => void {
  return (tree) => {
    visit(tree, 'element', (node) => {
      if (node.tagName !== 'input') return;
      const done = Boolean(node.properties.checked);
      node.tagName = 'span';
      node.properties = { className: ['box'], role: 'img', ariaLabel: done ? 'done' : 'not done' };
      node.children = [{ type: 'text', value: done ? '[x]' : '[\u00a0]' }];
    });
  };
}
