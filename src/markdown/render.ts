/** A note's prose to HTML: parsed, cleaned, and then presented with what the journal knows. */
import type { Root } from 'hast';
import rehypeRaw from 'rehype-raw';
import rehypeSanitize from 'rehype-sanitize';
import rehypeStringify from 'rehype-stringify';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { constructsIn, gfmConstructs } from './gfm-as-needed.ts';
import { headings } from './headings.ts';
import type { NoteContext } from './note-context.ts';
import { ownAnchors } from './own-anchors.ts';
import { pictures } from './pictures.ts';
import { references } from './references.ts';
import { SAFE_HTML } from './safe-html.ts';
import { tables } from './tables.ts';
import { taskBoxes } from './task-boxes.ts';

/**
 * Renders the prose of one note.
 *
 * Cleaning comes before presenting, so that what a note writes and what we add are never confused: nothing
 * of a note's own gets past the schema, and our classes and renderings need no place in it.
 *
 * @param body Markdown: CommonMark with GitHub's tables, strikethrough, footnotes, task lists and bare addresses
 * @param context what the note names
 * @returns HTML for the page of the session; '' for an empty note
 */
export function renderNote(body: string, context: NoteContext): { readonly html: string } {
  if (body.trim() === '') return { html: '' };
  const reader = readerFor(body);
  const tree = reader.runSync(reader.parse(body)) as Root;
  for (const present of [references(context), pictures(context), tables(), headings(), taskBoxes(), ownAnchors()]) present(tree);
  return { html: writer.stringify(tree) };
}

const writer = unified().use(rehypeStringify).freeze();

type Reader = ReturnType<typeof makeReader>;
const readers = new Map<string, Reader>();

/** Raw HTML costs a second parser, so only a note that may hold some goes through it. */
function readerFor(body: string): Reader {
  const bits = constructsIn(body);
  const raw = /<[a-z/!?]/i.test(body);
  const key = `${bits} ${raw}`;
  const known = readers.get(key);
  if (known) return known;
  const made = makeReader(bits, raw);
  readers.set(key, made);
  return made;
}

function makeReader(bits: number, raw: boolean) {
  return unified()
    .use(remarkParse)
    .use(gfmConstructs, bits)
    .use(remarkRehype, { allowDangerousHtml: raw, clobberPrefix: '' })
    .use(raw ? [rehypeRaw] : [])
    .use(rehypeSanitize, SAFE_HTML)
    .freeze();
}
