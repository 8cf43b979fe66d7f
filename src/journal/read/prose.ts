/**
 * What the prose of a note points at: links to parts, bags, items, sessions and consumables, and pictures,
 * each with its paragraph and place. Presenting the prose is not done here.
 *
 * Most notes are plain enough for a scanner that costs next to nothing; whatever it cannot be sure of (code,
 * backslashes, angle brackets, brackets that do not pair, lists around pictures) goes through a full CommonMark
 * parse. Both give the same for what the scanner takes on, which a property test holds.
 */
import type { Link, Nodes } from 'mdast';
import { visit } from 'unist-util-visit';
import type { Place, ProseLink } from '../model.ts';
import { linkNamed } from '../values/link.ts';
import { noteMarkdown } from './note-markdown.ts';
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

/** Reads the prose between two offsets of a note. */
export function readProse(source: SourceText, start: number, end: number): Prose {
  const text = source.text.slice(start, end);
  if (!text.includes('](') && !text.includes(']:') && !text.includes('<')) return { links: [], others: [], images: [] };
  return scanProse(source, start, text) ?? parseProse(source, start, text);
}

/** What needs a real parser: code, escapes, HTML and autolinks, entities, references, indented text; and brackets before those of a link. */
const UNSURE = /[`\\<&\0]|\]:|~~~|^(?: {4}|\t)/m;
const LINK = /(!?)\[([^[\]]*)\]\(([^()\s]*)(?:[ \t]+"([^"\n]*)")?\)/g;
/** Code between single backticks on one line, which binds tighter than a link. */
const CODE = /(?<!`)`(?!`)[^`\n]+`(?!`)/g;
const LISTS = /^[ \t]*(?:[-+*>|#]|\d+[.)])/m;

/** The cheap way; null when it cannot be sure. */
export function scanProse(source: SourceText, start: number, written: string): Prose | null {
  const text = written.includes('`') ? withoutCode(written) : written;
  if (text === null || UNSURE.test(text) || hasBracketsBeforeLink(text)) return null;
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
  const inLabel = labelsOf(text).some(({ label }) => holdsInOrder(label, '[', '`'));
  const inTarget = text.split(')').some((upTo) => holdsInOrder(upTo, '](', '`'));
  return inLabel || inTarget ? null : text.replaceAll(CODE, (code) => 'c'.repeat(code.length));
}

/** `a] b [c](d)`: whether the first bracket belongs to the link is for the parser to say. */
function hasBracketsBeforeLink(text: string): boolean {
  return labelsOf(text).some(({ label, isFirst }) => !isFirst && /^[^([]*\[/.test(label));
}

/**
 * What stands before each `](`, back to the bracket that closes something before it. One pass: a pattern that begins anew at each
 * bracket takes minutes over thousands of them.
 */
function labelsOf(text: string): { readonly label: string; readonly isFirst: boolean }[] {
  const between = text.split(']');
  return between.flatMap((label, n) => (between[n + 1]?.startsWith('(') ? [{ label, isFirst: n === 0 }] : []));
}

function holdsInOrder(text: string, first: string, second: string): boolean {
  const at = text.indexOf(first);
  return at !== -1 && text.includes(second, at + first.length);
}

function countBreaks(text: string, from: number, to: number): number {
  return text.slice(from, to).match(/\n[ \t\r]*\n/g)?.length ?? 0;
}

interface Links {
  readonly links: ProseLink[];
  readonly others: OtherLink[];
}

function pushLink({ links, others }: Links, url: string, paragraph: number, place: Place): void {
  const named = linkNamed(url);
  if (named === null) others.push({ url, place });
  else links.push({ ...named, paragraph, place });
}

const markdown = noteMarkdown().freeze();

/** The exact way: the parse that the pages are made from. */
export function parseProse(source: SourceText, start: number, text: string): Prose {
  const links: ProseLink[] = [];
  const others: OtherLink[] = [];
  const images: ProseImage[] = [];
  const tree = markdown.parse(text);
  const definitions = new Map<string, { url: string; title: string | null }>();
  visit(tree, 'definition', (node) => {
    if (!definitions.has(node.identifier)) definitions.set(node.identifier, { url: node.url, title: node.title ?? null });
  });
  let paragraph = 0;
  visit(tree, (node: Nodes) => {
    if (node.type === 'paragraph' || node.type === 'heading') paragraph += 1;
    const place = (): Place => source.place(start + (node.position?.start.offset ?? 0), start + (node.position?.end.offset ?? 0));
    if (node.type === 'link' && !isBare(node, text)) pushLink({ links, others }, node.url, paragraph, place());
    if (node.type === 'text') pushUnlinked(others, source, start + (node.position?.start.offset ?? 0), node.value);
    if (node.type === 'html') for (const url of addressesIn(node.value)) pushLink({ links, others }, url, paragraph, place());
    if (node.type === 'linkReference') pushLink({ links, others }, definitions.get(node.identifier)?.url ?? '', paragraph, place());
    if (node.type === 'image') images.push({ url: node.url, alt: node.alt ?? '', title: node.title ?? null, paragraph, place: place() });
    if (node.type === 'imageReference') {
      const target = definitions.get(node.identifier);
      if (target) images.push({ ...target, alt: node.alt ?? '', paragraph, place: place() });
    }
  });
  return { links, others, images };
}

/** An address of the web that stands in the prose as it is, which is nothing of the journal's. */
function isBare({ position }: Link, text: string): boolean {
  return !/[[<]/.test(text[position?.start.offset ?? -1] ?? '');
}

/** Where the links lead that are written as HTML, `<a href="part:drum">`. */
function addressesIn(html: string): string[] {
  return [...html.matchAll(/<a\s(?:[^>"']|"[^"]*"|'[^']*')*?\bhref\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'>]+))/gi)].map((match) =>
    match.slice(1).join(''),
  );
}

/** `[the drum](part: drum)` was meant as a link, and a space keeps it from being one. */
function pushUnlinked(others: OtherLink[], source: SourceText, start: number, value: string): void {
  for (const [all, url = ''] of value.matchAll(/\]\(([^()]*)\)/g)) {
    const meant = /\s/.test(url) && linkNamed(url.replace(/\s+/g, ''));
    const at = meant ? source.text.indexOf(all, start) : -1;
    if (at !== -1) others.push({ url, place: source.place(at + 2, at + all.length - 1) });
  }
}
