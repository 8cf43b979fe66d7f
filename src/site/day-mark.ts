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
  const pieces = between(page, MARK);
  return pieces.length === 1 ? page : Buffer.concat(pieces.flatMap((piece, n) => (n === 0 ? [piece] : [day, piece])));
}

/**
 * The pieces of a page before, between and behind the places where the day stands; not where it is the end of another one, as
 * `2 May` is of `12 May`.
 *
 * @param day '' for none: the whole is one piece
 */
export function withoutDay(page: Uint8Array, day: string): readonly Uint8Array[] {
  if (day === '') return [page];
  const mark = new TextEncoder().encode(day);
  return between(page, mark, (at) => !isOfWord(page[at - 1]) && !isOfWord(page[at + mark.length]));
}

/** Of a letter or a figure, or of anything that is not ASCII. */
function isOfWord(byte: number | undefined): boolean {
  return byte !== undefined && (byte > 0x7f || /[0-9a-z]/i.test(String.fromCharCode(byte)));
}

function between(page: Uint8Array, mark: Uint8Array, isMeant: (at: number) => boolean = () => true): readonly Uint8Array[] {
  const from = Buffer.from(page.buffer, page.byteOffset, page.byteLength);
  const pieces: Uint8Array[] = [];
  let start = 0;
  for (let at = from.indexOf(mark); at >= 0; at = from.indexOf(mark, at + mark.length)) {
    if (!isMeant(at)) continue;
    pieces.push(from.subarray(start, at));
    start = at + mark.length;
  }
  return [...pieces, from.subarray(start)];
}
