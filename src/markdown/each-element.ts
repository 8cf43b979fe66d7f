import type { Element, Root } from 'hast';

/** What a visit may say: where among the parent's children to go on; nothing for the next one after looking inside. */
type Next = number | undefined;

/**
 * Visits every element of a tree, from the top and in reading order. The visit may change the element, and
 * may replace it among its parent's children; then it says at which child to go on.
 *
 * The common library for this names every step for the sake of its stack traces, which took a third of the
 * time of rendering a note.
 */
export function eachElement(parent: Root | Element, visit: (element: Element, index: number, parent: Root | Element) => Next): void {
  for (let index = 0; index < parent.children.length; ) {
    const child = parent.children[index];
    const next = child?.type === 'element' ? visit(child, index, parent) : undefined;
    const now = parent.children[index];
    if (next === undefined && now?.type === 'element') eachElement(now, visit);
    index = next ?? index + 1;
  }
}
