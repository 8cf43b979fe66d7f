import type { Element, Root } from 'hast';
import { visit } from 'unist-util-visit';
import { inside, isAway } from '../journal/compile/paths.ts';
import { labelAfter } from '../journal/model/link-target.ts';
import { decoded, linkNamed, linkText } from '../journal/values/link.ts';
import type { NoteContext } from './note-context.ts';
import { contextOf, type NoteFile } from './note-file.ts';

/**
 * Links to what the journal knows become links to its pages.
 *
 *     [the drum](part:front-drum-near), [](bag:14), [the receipt](receipt.pdf)
 *
 *     <a href="../parts/front-drum-near.html#front-drum-near" class="to-part">the drum</a>,
 *     <a href="../bags.html#bag-14" class="to-bag">bag 14</a>,
 *     <a href="../papers/receipt-0f3a.pdf" class="to-file">the receipt</a>
 *
 * A link of ours that leads nowhere keeps its words and loses its address. Any other link stays as it is.
 */
export function references(): (tree: Root, file: NoteFile) => void {
  return (tree, file) => {
    const context = contextOf(file);
    visit(tree, 'element', (node, n, parent) => {
      if (node.tagName !== 'a' || typeof node.properties.href !== 'string') return;
      present(node, node.properties.href, context, wordsBefore(parent?.children ?? [], n ?? 0));
    });
  };
}

function present(link: Element, written: string, context: NoteContext, before: string): void {
  const named = linkNamed(written);
  if (named === null) {
    const path = isAway(written) ? null : inside(context.folder, decoded(written));
    const file = path === null ? undefined : context.files.get(path);
    if (file !== undefined) link.properties = { ...link.properties, href: file, className: ['to-file'] };
    return;
  }
  const target = context.targets.get(linkText(named));
  const { href: _, ...rest } = link.properties;
  link.properties = target ? { ...rest, href: target.href, className: [`to-${named.scheme}`] } : rest;
  if (link.children.length === 0) link.children = [{ type: 'text', value: target ? labelAfter(before, target.label) : written }];
}

/** The words before a place among its neighbours; what is more than text stands there as dots. */
function wordsBefore(beside: Root['children'], n: number): string {
  return beside
    .slice(0, n)
    .map((node) => ('value' in node ? node.value : '…'))
    .join('');
}
