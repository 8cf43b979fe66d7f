/** The prose of a note → Typst. It is read as it is for the pages; HTML in it is left out but for its text. */
import type { Link, Nodes, PhrasingContent, Root, RootContent, Table } from 'mdast';
import { labelAfter } from '../journal/model/link-target.ts';
import { noteMarkdown } from '../journal/read/note-markdown.ts';
import { linkNamed } from '../journal/values/link.ts';
import { call, list, literal, words } from './typst-text.ts';

/** What a note's prose is set with. */
export interface ProseSetting {
  /** A picture by its address as the prose has it, with the words it stands there with; '' where the book has none. */
  picture(url: string, alt: string, title: string | null): string;
  /** A mention of a part, for the index: Typst source, or ''. */
  mention(part: string): string;
  /** What a link without words of its own is called. */
  nameOf(url: string): string;
}

const markdown = noteMarkdown();

/** @returns Typst source of the paragraphs, '' for an empty note */
export function proseToTypst(body: string, setting: ProseSetting): string {
  const tree = markdown.parse(body) as Root;
  const notes = new Map(
    tree.children.flatMap((node) => (node.type === 'footnoteDefinition' ? [[node.identifier, node.children] as const] : [])),
  );
  return blocks(tree.children, { ...setting, notes });
}

interface Setting extends ProseSetting {
  readonly notes: ReadonlyMap<string, readonly RootContent[]>;
}

function blocks(nodes: readonly RootContent[], setting: Setting): string {
  return nodes
    .map((node) => block(node, setting))
    .filter((text) => text !== '')
    .join('\n\n');
}

function block(node: RootContent, setting: Setting): string {
  switch (node.type) {
    case 'paragraph':
      return paragraph(node.children, setting);
    case 'heading':
      return call('note-heading', {}, inline(node.children, setting));
    case 'blockquote':
      return call('quoted', {}, blocks(node.children, setting));
    case 'list': {
      const items = node.children.map((item) => {
        const box = item.checked === true ? '☑ ' : item.checked === false ? '☐ ' : '';
        return `[${words(box)}${blocks(item.children, setting)}]`;
      });
      return `#${node.ordered ? 'enum' : 'list'}(${node.ordered && node.start ? `start: ${node.start}, ` : ''}${items.join(', ')})`;
    }
    case 'code':
      return `#raw(${codeLiteral(node.value)}, block: true)`;
    case 'table':
      return table(node, setting);
    case 'thematicBreak':
      return '#pause-rule()';
    default:
      return '';
  }
}

/** Pictures of a paragraph stand after its words, as they do on a page that has room. */
function paragraph(children: readonly PhrasingContent[], setting: Setting): string {
  const pictures = children.filter((child) => child.type === 'image');
  const rest = children.filter((child) => child.type !== 'image');
  const text = inline(rest, setting).trim();
  const set = pictures.map(({ url, alt, title }) => setting.picture(url, alt ?? '', title ?? null));
  return [text, ...set].filter((one) => one !== '').join('\n\n');
}

function inline(nodes: readonly PhrasingContent[], setting: Setting): string {
  const before = (n: number): string => nodes.slice(0, n).map(textOf).join('');
  return nodes.map((node, n) => phrase(node, setting, node.type === 'link' ? before(n) : '')).join('');
}

function phrase(node: PhrasingContent, setting: Setting, before: string): string {
  switch (node.type) {
    case 'text':
      return words(node.value);
    case 'emphasis':
      return `#emph[${inline(node.children, setting)}]`;
    case 'strong':
      return `#strong[${inline(node.children, setting)}]`;
    case 'delete':
      return `#strike[${inline(node.children, setting)}]`;
    case 'inlineCode':
      return `#raw(${codeLiteral(node.value)})`;
    case 'break':
      return '#linebreak()';
    case 'link':
      return linked(node, before, setting);
    case 'footnoteReference': {
      const note = setting.notes.get(node.identifier);
      return note === undefined ? '' : `#footnote[${blocks(note, setting)}]`;
    }
    case 'image':
    case 'html':
      return '';
    default:
      return words(textOf(node));
  }
}

/** On paper a link is its words; an address outside is printed after them, and a part is noted for the index. */
function linked({ url, children }: Link, before: string, setting: Setting): string {
  const text = children.length === 0 ? words(labelAfter(before, setting.nameOf(url))) : inline(children, setting);
  const name = linkNamed(url);
  if (name !== null) return name.scheme === 'part' ? `${setting.mention(name.id)}${text}` : text;
  if (!/^https?:\/\//i.test(url)) return text;
  const bare = textOf({ type: 'paragraph', children: [...children] }) === url;
  return bare ? `#link(${literal(url)})` : `${text}#footnote[#link(${literal(url)})]`;
}

function table(node: Table, setting: Setting): string {
  const aligned = node.children[0]?.children.map((_, n) => node.align?.[n] ?? 'left') ?? [];
  const [head, ...rows] = node.children.map((row) => row.children.map((cell) => `[${inline(cell.children, setting)}]`));
  const cells = rows.flat().join(', ');
  return `#note-table(columns: ${aligned.length}, align: ${list(aligned)}, table.header(${head?.join(', ')}), ${cells})`;
}

function textOf(node: Nodes): string {
  if ('value' in node) return node.value;
  return 'children' in node ? node.children.map((child) => textOf(child as Nodes)).join('') : '';
}

/** Code keeps its line ends. */
function codeLiteral(text: string): string {
  return `"${text
    .replace(/[\\"]/g, '\\$&')
    .replaceAll('\n', '\\n')
    .replaceAll('\t', '\\t')
    .replace(/\p{Cc}/gu, ' ')}"`;
}
