import type { Root } from 'hast';
import rehypeRaw from 'rehype-raw';
import { EXIT, visit } from 'unist-util-visit';

/**
 * HTML that a note writes becomes elements like any other. A note without any is left alone: the parser of HTML
 * would read its code once more, and drop a first line that is empty.
 */
export function rawHtml(): (tree: Root, file: Parameters<ReturnType<typeof rehypeRaw>>[1]) => Root {
  const parse = rehypeRaw();
  return (tree, file) => (holdsRaw(tree) ? (parse(tree, file) as Root) : tree);
}

function holdsRaw(tree: Root): boolean {
  let found = false;
  visit(tree, 'raw', () => {
    found = true;
    return EXIT;
  });
  return found;
}
