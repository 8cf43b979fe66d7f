/** A note without fields: its day stands in its name, its title in its first heading or its first words. */
import type { Paragraph, PhrasingContent, Root } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import { EXIT, visit } from 'unist-util-visit';
import { type IsoDate, readDate } from '../values/date.ts';
import { noteMarkdown } from './note-markdown.ts';
import { tooMuchOf } from './prose-limits.ts';

export interface ProseAlone {
  readonly date: IsoDate;
  readonly title: string;
  /** Where the prose begins in the text; a heading or a line at the top that is the title is none of it. */
  readonly start: number;
}

const LONGEST_TITLE = 60;
const markdown = noteMarkdown().freeze();

/**
 * @param id of the session, from the name of its file
 * @param fields names that fields have, in small letters
 * @returns null when the name gives no day, or when the text begins with a field or with what opens the fields
 */
export function proseAlone(text: string, id: string, fields: ReadonlySet<string>): ProseAlone | null {
  const day = readDate(id.slice(0, 10));
  const first = /\S[^\r\n]*/.exec(text)?.[0] ?? '';
  const field = /^([a-z][\w-]*)\s*:/i.exec(first)?.[1]?.toLowerCase();
  const opensFields = /^(?:--|[–—]|\.\.\.\s*$|```(?:yaml)?\s*$|\+\+\+)/.test(first);
  if (!day.ok || !/^(?:-|$)/.test(id.slice(10)) || opensFields || (field !== undefined && fields.has(field))) return null;
  const { title, start } = titled(text, id);
  return { date: day.value, title, start: start + (start > 0 ? (/^\s*\n/.exec(text.slice(start))?.[0].length ?? 0) : 0) };
}

function titled(text: string, id: string): { title: string; start: number } {
  if (tooMuchOf(text) !== null) return { title: fromName(id), start: 0 };
  const tree = markdown.parse(text);
  const { children } = tree;
  const heading = children.find(({ type }) => type === 'heading');
  const title = heading ? textOf(heading).trim() : '';
  if (heading && title !== '') {
    const isTop = heading === children[0] && heading.type === 'heading' && !heading.children.some(leads);
    return { title, start: isTop ? (heading.position?.end.offset ?? 0) : 0 };
  }
  const words = firstWords(tree);
  const [first] = children;
  return { title: words ?? fromName(id), start: first?.type === 'paragraph' && words !== null ? endOfTitle(text, first, words) : 0 };
}

/** Where the line ends that is the title and nothing else, with more below it; 0 where the title is part of a sentence that goes on, or leads somewhere. */
function endOfTitle(text: string, { position, children }: Paragraph, title: string): number {
  const start = position?.start.offset ?? 0;
  const end = position?.end.offset ?? 0;
  const [line = ''] = /^[^\r\n]*/.exec(text.slice(start, end)) ?? [];
  const isSentence = start + line.length === end || /[.!?]\s*$/.test(line);
  const onLine = children.filter((child) => (child.position?.start.offset ?? 0) < start + line.length);
  return isSentence && text.slice(start + line.length).trim() !== '' && line.trim().replace(/\.$/, '') === title && !onLine.some(leads)
    ? start + line.length
    : 0;
}

/** What would be lost with its words: a link, a picture. */
const leads = ({ type }: PhrasingContent): boolean => /^(?:link|image|footnote|html)/.test(type);

/** The first sentence, cut at a word where it is long; null where no words are. */
function firstWords(tree: Root): string | null {
  let words = '';
  visit(tree, 'paragraph', (paragraph) => {
    words = textOf(paragraph).trim();
    return words === '' ? undefined : EXIT;
  });
  const sentence = (words.split(/(?<=[.!?])\s|\s*\n/)[0] ?? '').replace(/\.$/, '');
  if (sentence === '') return null;
  if (sentence.length <= LONGEST_TITLE) return sentence;
  return `${sentence.slice(0, LONGEST_TITLE + 1).replace(/\s+\S*$/, '')}…`;
}

/** `2031-03-12-brake-drum` says `Brake drum`. */
function fromName(id: string): string {
  const words = id.slice(11).replaceAll('-', ' ');
  return words === '' ? id : words.charAt(0).toUpperCase() + words.slice(1);
}
