/**
 * The record's day stands at the foot of every page, and every evening it is another. So pages are made with a mark in its
 * place, which is filled as they are written: a page that shows nothing else new is the page that it was.
 */

/** Nothing that is read from a journal holds such characters. */
export const DAY_MARK = '\u0001day\u0001';

/** What it is filled with, as markup. */
export function dayInMarkup(words: string): string {
  return words.replaceAll(/[&<>"']/g, (mark) => `&#${mark.charCodeAt(0)};`);
}

const MARK = new TextEncoder().encode(DAY_MARK);

/** @returns the page with the mark filled wherever it stands */
export function fillDay(page: Uint8Array, day: Uint8Array): Uint8Array {
  const from = Buffer.from(page.buffer, page.byteOffset, page.byteLength);
  const pieces: Uint8Array[] = [];
  let start = 0;
  for (let at = from.indexOf(MARK); at >= 0; at = from.indexOf(MARK, start)) {
    pieces.push(from.subarray(start, at), day);
    start = at + MARK.length;
  }
  return start === 0 ? page : Buffer.concat([...pieces, from.subarray(start)]);
}
