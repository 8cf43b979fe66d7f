/**
 * What the prose of a note points at: links to parts, bags, items, sessions and consumables, and pictures,
 * each with its paragraph and place. Presenting the prose is not done here.
 *
 * Most notes are plain enough for a scanner that costs next to nothing; whatever it cannot be sure of (code,
 * backslashes, angle brackets, brackets that do not pair, lists around pictures) goes through a full CommonMark
 * parse. Both give the same for what the scanner takes on, which a property test holds.
 */
import type { Nodes } from 'mdast';
import { fromMarkdown } from 'mdast-util-from-markdown';
import type { Place, ProseLink } from '../model.ts';
import type { SourceText } from './source/text.ts';

export interface ProseImage {
  readonly url: string;
  readonly alt: string;
  readonly title: string | null;
  readonly paragraph: number;
  readonly place: Place;
}

/** A link to something that is not named by what it is: a file, an address, or nothing. */
export interface OtherLink {
  readonly url: string;
  readonly place: Place;
}

export interface Prose {
  readonly links: readonly ProseLink[];
  readonly others: readonly OtherLink[];
  readonly images: readonly ProseImage[];
}

export const LINK_SCHEMES = ['part', 'bag', 'item', 'session', 'consumable'] as const;
const OURS = /^(part|bag|item|session|consumable):(.+)$/;

/** Reads the prose between two offsets of a note. */
export function readProse(source: SourceText, start: number, end: number): Prose {
  const text = source.text.slice(start, end);
  if (!text.includes('](') && !text.includes(']:') && !text.includes('<')) return { links: [], others: [], images: [] };
  return scanProse(source, start, text) ?? parseProse(source, start, text);
}

/** What needs a real parser: code, escapes, HTML and autolinks, entities, references, indented text. */
const UNSURE = /[`\\<&\0]|\]:|~~~|^(?: {4}|\t)|\][^(]*\[[^\]]*\]\(/m;
const LINK = /(!?)\[([^[\]]*)\]\(([^()\s]*)(?:[ \t]+"([^"\n]*)")?\)/g;
/** Code between single backticks on one line, which binds tighter than a link. */
const CODE = /(?<!`)`(?!`)[^`\n]+`(?!`)/g;
const LISTS = /^[ \t]*(?:[-+*>|#]|\d+[.)])/m;

/** The cheap way; null when it cannot be sure. */
export function scanProse(source: SourceText, start: number, written: string): Prose | null {
  const text = written.includes('`') ? withoutCode(written) : written;
  if (text === null || UNSURE.test(text)) return null;
  const links: ProseLink[] = [];
  const others: OtherLink[] = [];
  const images: ProseImage[] = [];
  let paragraph = 0;
  let scanned = 0;
  let found = 0;
  for (const match of text.matchAll(LINK)) {
    found += 1;
    const [all, bang, label = '', url = '', title] = match;
    const at = match.index;
    paragraph += countBreaks(text, scanned, at);
    scanned = at;
    const place = source.place(start + at, start + at + all.length);
    if (bang === '!') images.push({ url, alt: label, title: title ?? null, paragraph, place });
    else pushLink({ links, others }, url, paragraph, place);
  }
  const sure = found === (text.match(/\]\(/g)?.length ?? 0) && (images.length === 0 || !LISTS.test(text));
  return sure ? { links, others, images } : null;
}

/** Letters stand where code did, so that offsets stay; null when code is part of a link or a picture. */
function withoutCode(text: string): string | null {
  const inLink = /\[[^\]]*`[^\]]*\]\(|\]\([^)]*`/.test(text);
  return inLink ? null : text.replaceAll(CODE, (code) => 'c'.repeat(code.length));
}

function countBreaks(text: string, from: number, to: number): number {
  return text.slice(from, to).match(/\n[ \t\r]*\n/g)?.length ?? 0;
}

interface Links {
  readonly links: ProseLink[];
  readonly others: OtherLink[];
}

function pushLink({ links, others }: Links, url: string, paragraph: number, place: Place): void {
  const ours = OURS.exec(url);
  if (!ours?.[1] || !ours[2]) others.push({ url, place });
  else links.push({ scheme: ours[1] as ProseLink['scheme'], id: decoded(ours[2]), paragraph, place });
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}

/** The exact way: a CommonMark parse. */
export function parseProse(source: SourceText, start: number, text: string): Prose {
  const links: ProseLink[] = [];
  const others: OtherLink[] = [];
  const images: ProseImage[] = [];
  const tree = fromMarkdown(text);
  const definitions = new Map<string, { url: string; title: string | null }>();
  walk(tree, (node) => {
    if (node.type !== 'definition') return;
    if (!definitions.has(node.identifier)) definitions.set(node.identifier, { url: node.url, title: node.title ?? null });
  });
  let paragraph = 0;
  walk(tree, (node) => {
    if (node.type === 'paragraph' || node.type === 'heading') paragraph += 1;
    const place = (): Place => source.place(start + (node.position?.start.offset ?? 0), start + (node.position?.end.offset ?? 0));
    if (node.type === 'link') pushLink({ links, others }, node.url, paragraph, place());
    if (node.type === 'text') pushUnlinked(others, source, start + (node.position?.start.offset ?? 0), node.value);
    // `[^1]` is a footnote to whoever reads it, whatever plain CommonMark makes of it.
    if (node.type === 'linkReference' && !node.identifier.startsWith('^'))
      pushLink({ links, others }, definitions.get(node.identifier)?.url ?? '', paragraph, place());
    if (node.type === 'image') images.push({ url: node.url, alt: node.alt ?? '', title: node.title ?? null, paragraph, place: place() });
    if (node.type === 'imageReference') {
      const target = definitions.get(node.identifier);
      if (target) images.push({ ...target, alt: node.alt ?? '', paragraph, place: place() });
    }
  });
  return { links, others, images };
}

/** `[the drum](part: drum)` was meant as a link, and a space keeps it from being one. */
function pushUnlinked(others: OtherLink[], source: SourceText, start: number, value: string): void {
  const meant = /\]\(((?:part|bag|item|session|consumable):[^)]*)\)/.exec(value);
  if (!meant?.[1]) return;
  const at = source.text.indexOf(meant[0], start);
  if (at !== -1) others.push({ url: meant[1], place: source.place(at + 2, at + meant[0].length - 1) });
}

function walk(node: Nodes, visit: (node: Nodes) => void): void {
  visit(node);
  if ('children' in node) for (const child of node.children) walk(child, visit);
}
