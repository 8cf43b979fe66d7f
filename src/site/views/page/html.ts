/**
 * Markup as text, for rows that are set thousands of times: what a component costs would be felt there.
 * Whatever is put into `html` is escaped, unless it is markup made by `html` itself.
 */
export interface Markup {
  readonly markup: string;
}

/** What may be put into markup: text is escaped, nothing stays nothing, a list stands one after another. */
export type Piece = Markup | string | number | null | undefined | false | readonly Piece[];

const ESCAPES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

export function html(texts: TemplateStringsArray, ...pieces: readonly Piece[]): Markup {
  let markup = texts[0] ?? '';
  for (let n = 0; n < pieces.length; n += 1) markup += written(pieces[n]) + (texts[n + 1] ?? '');
  return { markup };
}

/** Markup pieces with something between them. */
export function joined(pieces: readonly Markup[], between: string | Markup): Markup {
  return { markup: pieces.map(({ markup }) => markup).join(written(between)) };
}

function written(piece: Piece): string {
  if (piece === null || piece === undefined || piece === false) return '';
  if (typeof piece === 'string') return /[&<>"']/.test(piece) ? piece.replaceAll(/[&<>"']/g, (mark) => ESCAPES[mark] ?? mark) : piece;
  if (typeof piece === 'number') return String(piece);
  if ('markup' in piece) return piece.markup;
  return piece.map(written).join('');
}
