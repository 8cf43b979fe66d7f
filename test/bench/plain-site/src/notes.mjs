// The notes of this site's own content collection. Plain JavaScript, because the types of `astro:content`
// describe the collections of one site only, the one at the top of the project, which has none.
import { getCollection, render } from 'astro:content';

/**
 * @typedef {object} Note
 * @property {string} id
 * @property {Record<string, unknown>} data its front matter
 */

/** @returns {Promise<Note[]>} */
export function allNotes() {
  return getCollection('notes');
}

/**
 * @param {Note} note
 * @returns {Promise<import('astro/runtime/server/index.js').AstroComponentFactory>}
 */
export async function contentOf(note) {
  return (await render(note)).Content;
}
