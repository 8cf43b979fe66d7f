import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { SourceText } from './text.ts';

/** A note cut in two: offsets of the YAML and of the prose within the file's text. */
export interface CutNote {
  readonly yaml: { readonly start: number; readonly end: number };
  readonly body: { readonly start: number; readonly end: number };
}

/**
 * Cuts a note at its `---` lines. Without a closing line nothing can be told apart, so nothing is read.
 *
 * @returns where the parts lie, or the diagnostic that says why not
 */
export function cutFrontMatter(source: SourceText): CutNote | Diagnostic {
  const { text } = source;
  const open = /^---[ \t]*(?:\r?\n|$)/.exec(text);
  if (!open) {
    const end = text.search(/\r?\n|$/);
    return diagnostic('A205', source.place(0, end), 'A note begins with a line `---`; this one does not.', {
      hint: 'Begin with three lines: `---`, `date: 2031-03-12`, `title: What was done`, and close with another `---`.',
    });
  }
  const start = open[0].length;
  const close = /^---[ \t]*(?:\r?\n|$)/m;
  const found = close.exec(text.slice(start));
  if (!found) {
    return diagnostic('A206', source.place(0, 3), 'The front matter that opens here is never closed.', {
      hint: 'Put a line `---` under the last field.',
    });
  }
  const end = start + found.index;
  return { yaml: { start, end }, body: { start: end + found[0].length, end: text.length } };
}
