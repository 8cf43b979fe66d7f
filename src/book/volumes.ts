/** A book that is too thick to bind is bound in volumes: pieces of it, in their order, shared out. */

/** What is not cut: an evening, or a chapter that is no story. */
export interface Piece {
  /** Typst source. */
  readonly source: string;
  /** The chapter that it belongs to, as the list of volumes names it. */
  readonly chapter: string;
  /** What stands before it where a volume begins with it: the head of its chapter, which goes on. */
  readonly goesOn: string;
  /** The evening that it tells, which other pieces point to. */
  readonly evening: string | null;
}

/** Two hundred sheets are what can be bound and held, and what the typesetter sets in less than a gigabyte. */
export const MOST_PAGES = 400;

/** Measured on long journals: source text to a page, and the room of a picture and of a pair of them, in pages. */
const TEXT_A_PAGE = 4000;
const PICTURE = 0.55;
const PLATE = 0.3;

/** About how many pages it fills. */
export function pagesOf({ source }: Piece): number {
  const times = (call: string): number => source.split(call).length - 1;
  return source.length / TEXT_A_PAGE + times('#picture(') * PICTURE + times('#plate(') * PLATE;
}

/** @returns volumes of about the same thickness, as few as keep to `most` pages each; a piece of more is a volume that is thicker */
export function intoVolumes(pieces: readonly Piece[], most = MOST_PAGES): readonly (readonly Piece[])[] {
  const total = pieces.reduce((sum, piece) => sum + pagesOf(piece), 0);
  const share = total / Math.max(1, Math.ceil(total / most));
  const volumes: Piece[][] = [];
  let before = 0;
  for (const piece of pieces) {
    const pages = pagesOf(piece);
    const fits = volumes.length > Math.floor((before + pages / 2) / share);
    before += pages;
    if (fits) volumes.at(-1)?.push(piece);
    else volumes.push([piece]);
  }
  return volumes;
}

/** The chapters that a volume holds, each once. */
export function chaptersIn(pieces: readonly Piece[]): readonly string[] {
  return [...new Set(pieces.map(({ chapter }) => chapter))];
}
