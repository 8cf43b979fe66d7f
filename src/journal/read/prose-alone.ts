/** A note without fields: its day stands in its name, its title in its first heading or its first words. */
import type { Root } from 'mdast';
import { toString as textOf } from 'mdast-util-to-string';
import { EXIT, visit } from 'unist-util-visit';
import { type IsoDate, readDate } from '../values/date.ts';
import { noteMarkdown } from './note-markdown.ts';
import { tooMuchOf } from './prose-limits.ts';

export interface ProseAlone {
  readonly date: IsoDate;
  readonly title: string;
  /** Where the prose begins in the text; a heading at the top that gives the title is none of it. */
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
  return { date: day.value, ...titled(text, id) };
}

function titled(text: string, id: string): { title: string; start: number } {
  if (tooMuchOf(text) !== null) return { title: fromName(id), start: 0 };
  const tree = markdown.parse(text);
  const { children } = tree;
  const heading = children.find(({ type }) => type === 'heading');
  const title = heading ? textOf(heading).trim() : '';
  if (title !== '') return { title, start: heading === children[0] ? (heading?.position?.end.offset ?? 0) : 0 };
  return { title: firstWords(tree) ?? fromName(id), start: 0 };
}

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
