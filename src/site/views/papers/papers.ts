import { paperAt } from '../page/facts.ts';
import type { Sheet } from '../page/sheet.ts';
import { counted } from '../page/words.ts';

/** A paper as the site publishes it: where it opens and what it is: `PDF, 2 pages, 84 kB`. */
export function paperFacts(sheet: Sheet, path: string): { readonly href: string; readonly words: string } | null {
  const paper = paperAt(sheet, path);
  if (paper === null) return null;
  const size = paper.bytes === null ? [] : [`${sheet.figures.whole(Math.max(1, Math.round(paper.bytes / 1000)))} kB`];
  const pages = paper.pages === null ? [] : [counted(paper.pages, 'page')];
  return { href: sheet.link(paper.file), words: [paper.kind === 'pdf' ? 'PDF' : 'picture', ...pages, ...size].join(', ') };
}
