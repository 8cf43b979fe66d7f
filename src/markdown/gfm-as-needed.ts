import type { Extension as FromMarkdownExtension } from 'mdast-util-from-markdown';
import { gfmAutolinkLiteralFromMarkdown } from 'mdast-util-gfm-autolink-literal';
import { gfmFootnoteFromMarkdown } from 'mdast-util-gfm-footnote';
import { gfmStrikethroughFromMarkdown } from 'mdast-util-gfm-strikethrough';
import { gfmTableFromMarkdown } from 'mdast-util-gfm-table';
import { gfmTaskListItemFromMarkdown } from 'mdast-util-gfm-task-list-item';
import { gfmAutolinkLiteral } from 'micromark-extension-gfm-autolink-literal';
import { gfmFootnote } from 'micromark-extension-gfm-footnote';
import { gfmStrikethrough } from 'micromark-extension-gfm-strikethrough';
import { gfmTable } from 'micromark-extension-gfm-table';
import { gfmTaskListItem } from 'micromark-extension-gfm-task-list-item';
import type { Extension } from 'micromark-util-types';

interface Construct {
  /** A note without this cannot hold the construct. */
  readonly sign: RegExp;
  readonly syntax: () => Extension;
  readonly tree: () => FromMarkdownExtension;
}

/**
 * The constructs of GitHub Flavored Markdown, each with the letters it cannot do without. Reading a note with
 * those alone whose sign it holds gives the same tree in half the time. A character reference may stand for a
 * letter of an address, so `&` counts as a sign of one. A single tilde is no strikethrough
 * ("about ~5 mm"), but where strikethrough is read it stands beside an asterisk as one more of its kind.
 */
export const CONSTRUCTS: readonly Construct[] = [
  { sign: /https?:|www\.|@|&/i, syntax: gfmAutolinkLiteral, tree: gfmAutolinkLiteralFromMarkdown },
  { sign: /\[\^/, syntax: gfmFootnote, tree: gfmFootnoteFromMarkdown },
  { sign: /~/, syntax: () => gfmStrikethrough({ singleTilde: false }), tree: gfmStrikethroughFromMarkdown },
  { sign: /\||:-|-:/, syntax: gfmTable, tree: gfmTableFromMarkdown },
  { sign: /\[[\sxX]\]/, syntax: gfmTaskListItem, tree: gfmTaskListItemFromMarkdown },
];

/** Which constructs a note may hold: a bit each, in the order of the list. */
export function constructsIn(markdown: string): number {
  return CONSTRUCTS.reduce((bits, { sign }, i) => bits | (sign.test(markdown) ? 1 << i : 0), 0);
}

/** Every construct. */
export const ALL_CONSTRUCTS = (1 << CONSTRUCTS.length) - 1;

/** Extends a unified processor's Markdown with the constructs of these bits. */
export function gfmConstructs(this: { data(): object }, bits: number): void {
  const data = this.data() as { micromarkExtensions?: Extension[]; fromMarkdownExtensions?: FromMarkdownExtension[] };
  const chosen = CONSTRUCTS.filter((_, i) => bits & (1 << i));
  data.micromarkExtensions = [...(data.micromarkExtensions ?? []), ...chosen.map(({ syntax }) => syntax())];
  data.fromMarkdownExtensions = [...(data.fromMarkdownExtensions ?? []), ...chosen.map(({ tree }) => tree())];
}
