import { labelAfter } from '../../../journal/model/link-target.ts';
import { shownProse } from '../page/shown-prose.ts';

interface Around {
  readonly nameOf?: NameOf;
  /** What stands over the words already. */
  readonly title?: string;
}

/** What a link without words of its own is called. */
export type NameOf = (address: string) => string;

/**
 * The first sentences of a note as plain text, for a list: up to the last full sentence within `most`
 * characters, else cut at a word; a colon that led up to a list becomes dots. Marks of links and emphasis
 * are dropped; headings, pictures, tables, lists and quotations are passed over, and so is the title where the prose
 * begins with it.
 */
export function openingWords(body: string, most: number, { nameOf = () => '', title = '' }: Around = {}): string {
  const paragraphs = shownProse(body)
    .split(/\n\s*\n/)
    .map((one) => one.trim());
  const told = paragraphs
    .filter((one) => one !== '' && !/^(#|!\[|>|[-*+] |\d+[.)] |\||```)/.test(one))
    .slice(0, 2)
    .map((one) => plain(one, nameOf));
  const [first = '', second = ''] = told;
  const rest = withoutTitle(first, title);
  return cut(rest === '' ? second : rest, most).replace(/:$/, ' …');
}

/** What follows a title and the end of its sentence or line; all of it where the title is only its beginning. */
function withoutTitle(words: string, title: string): string {
  if (title === '' || !words.startsWith(title)) return words;
  const rest = words.slice(title.length);
  return /^[.!?]?(?:\n|\s*$)|^[.!?]\s/.test(rest) ? rest.replace(/^[.!?]?\s*/, '') : words;
}

/** Between backticks everything is as it stands, so code is set aside while marks are taken out. */
function plain(paragraph: string, nameOf: NameOf): string {
  const code: string[] = [];
  return paragraph
    .replaceAll(/`([^`]*)`/g, (_, inside: string) => `\uE000${code.push(inside) - 1}\uE000`)
    .replaceAll(/!\[[^\]]*\]\([^)]*\)/g, '')
    .replaceAll(
      /\[([^\]]*)\]\(([^)]*)\)/g,
      (_, words: string, address: string, at: number, all: string) => words || labelAfter(all.slice(0, at), nameOf(address)),
    )
    .replaceAll(/(\*\*|__|\*|`|~~)/g, '')
    .replaceAll(/\uE000(\d+)\uE000/g, (_, n: string) => code[Number(n)] ?? '')
    .trim();
}

function cut(written: string, most: number): string {
  const text = written.replaceAll(/\s+/g, ' ');
  if (text.length <= most) return text;
  const head = text.slice(0, most);
  const sentence = head.search(/[.!?][^.!?]*$/);
  if (sentence > most / 3) return head.slice(0, sentence + 1);
  return `${head.slice(0, head.lastIndexOf(' '))} …`;
}
