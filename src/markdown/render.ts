/** A note's prose to HTML: parsed, cleaned, and then presented with what the journal knows. */
import rehypeSanitize from 'rehype-sanitize';
import rehypeStringify from 'rehype-stringify';
import remarkRehype from 'remark-rehype';
import { noteMarkdown } from '../journal/read/note-markdown.ts';
import { headings } from './headings.ts';
import type { NoteContext } from './note-context.ts';
import { ownAnchors } from './own-anchors.ts';
import { pictures } from './pictures.ts';
import { rawHtml } from './raw-html.ts';
import { references } from './references.ts';
import { SAFE_HTML } from './safe-html.ts';
import { tables } from './tables.ts';
import { taskBoxes } from './task-boxes.ts';

/**
 * Cleaning comes before presenting, so that what a note writes and what we add are never confused: nothing
 * of a note's own gets past the schema, and our classes and renderings need no place in it.
 */
const notes = noteMarkdown()
  .use(remarkRehype, { allowDangerousHtml: true, clobberPrefix: '' })
  .use(rawHtml)
  .use(rehypeSanitize, SAFE_HTML)
  .use(references)
  .use(pictures)
  .use(tables)
  .use(headings)
  .use(taskBoxes)
  .use(ownAnchors)
  .use(rehypeStringify)
  .freeze();

/**
 * Renders the prose of one note.
 *
 * @param body Markdown
 * @param context what the note names
 * @returns HTML for the page of the session; '' for an empty note
 */
export function renderNote(body: string, context: NoteContext): { readonly html: string } {
  if (body.trim() === '') return { html: '' };
  return { html: String(notes.processSync({ value: body, data: { note: context } })) };
}
