import { shownProse } from '../page/shown-prose.ts';

/** What a link without words of its own is called. */
export type NameOf = (address: string) => string;

/**
 * The first sentences of a note as plain text, for a list: up to the last full sentence within `most`
 * characters, else cut at a word; a colon that led up to a list becomes dots. Marks of links and emphasis
 * are dropped; headings, pictures, tables, lists and quotations are passed over.
 */
export function openingWords(body: string, most: number, nameOf: NameOf = () => ''): string {
  const paragraphs = shownProse(body)
    .split(/\n\s*\n/)
    .map((one) => one.trim());
  const first = paragraphs.find((one) => one !== '' && !/^(#|!\[|>|[-*+] |\d+[.)] |\||```)/.test(one));
  return first === undefined ? '' : cut(plain(first, nameOf), most).replace(/:$/, ' …');
}

/** Between backticks everything is as it stands, so code is set aside while marks are taken out. */
function plain(paragraph: string, nameOf: NameOf): string {
  const code: string[] = [];
  return paragraph
    .replaceAll(/`([^`]*)`/g, (_, inside: string) => `\uE000${code.push(inside) - 1}\uE000`)
    .replaceAll(/!\[[^\]]*\]\([^)]*\)/g, '')
    .replaceAll(/\[([^\]]*)\]\(([^)]*)\)/g, (_, words: string, address: string) => words || nameOf(address))
    .replaceAll(/(\*\*|__|\*|`|~~)/g, '')
    .replaceAll(/\uE000(\d+)\uE000/g, (_, n: string) => code[Number(n)] ?? '')
    .replaceAll(/\s+/g, ' ')
    .trim();
}

function cut(text: string, most: number): string {
  if (text.length <= most) return text;
  const head = text.slice(0, most);
  const sentence = head.search(/[.!?][^.!?]*$/);
  if (sentence > most / 3) return head.slice(0, sentence + 1);
  return `${head.slice(0, head.lastIndexOf(' '))} …`;
}
