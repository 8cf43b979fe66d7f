import { type Diagnostic, diagnostic } from '../../diagnostics/diagnostic.ts';
import type { SureRepair } from '../../diagnostics/repair.ts';
import type { SourceText } from './text.ts';

/** A note cut in two: offsets of the YAML and of the prose within the file's text. */
export interface CutNote {
  readonly yaml: { readonly start: number; readonly end: number };
  readonly body: { readonly start: number; readonly end: number };
}

/** A line that was meant to be `---`. */
const NEARLY = /^[ \t]*(?:--|[–—]{1,2}|[-–—]{3,}|\.\.\.|`{3}(?:yaml)?|\+\+\+)[ \t]*(?:\r?\n|$)/m;
const EXACT = /^---[ \t]*(?:\r?\n|$)/;
const CLOSING = /^---[ \t]*(?:\r?\n|$)/m;

interface Mark {
  readonly start: number;
  readonly end: number;
}

/**
 * Cuts a note at its `---` lines. Where one is wrong or missing but it can be told where it was meant to be, the note
 * is cut there, so that what else is wrong in it is told in the same run.
 *
 * @returns where the parts lie (null when that cannot be told), what is wrong with the lines, and what was meant by them
 */
export function cutFrontMatter(source: SourceText): {
  cut: CutNote | null;
  diagnostics: Diagnostic[];
  repairs: SureRepair[];
} {
  const { text } = source;
  const open = opening(text);
  const diagnostics = EXACT.test(text) ? [] : [notOpened(source, open)];
  if (open === null) return { cut: null, diagnostics, repairs: [] };
  const repairs = EXACT.test(text.slice(open.start)) ? [] : [hyphensAt(source, open)];
  const close = next(text, open.end, CLOSING) ?? closing(text, open.end);
  const closed = close !== null && EXACT.test(text.slice(close.start));
  if (!closed) diagnostics.push(notClosed(source, open, close));
  if (close === null) return { cut: null, diagnostics, repairs };
  if (!closed && text.slice(close.start, close.end).trim() !== '') repairs.push(hyphensAt(source, close));
  return { cut: { yaml: { start: open.end, end: close.start }, body: { start: close.end, end: text.length } }, diagnostics, repairs };
}

function hyphensAt(source: SourceText, { start, end }: Mark): SureRepair {
  const line = source.text.slice(start, end);
  const place = source.place(start, start + line.trimEnd().length);
  return { place, text: '---', told: place };
}

/** The first line that is not blank, when it was meant to open the fields. */
function opening(text: string): Mark | null {
  const start = /^(?:[ \t]*\r?\n)*/.exec(text)?.[0].length ?? 0;
  const found = EXACT.exec(text.slice(start)) ?? NEARLY.exec(text.slice(start, text.indexOf('\n', start) + 1));
  return found && { start, end: start + found[0].length };
}

/** Without a closing line: one that was meant as such, else where the fields end and prose begins. */
function closing(text: string, from: number): Mark | null {
  const nearly = next(text, from, NEARLY);
  for (const blank of text.slice(from).matchAll(/\n[ \t]*\r?\n(?=[^\s#-])/g)) {
    const end = from + blank.index + blank[0].length;
    if (nearly !== null && nearly.start < end) return nearly;
    if (!/^[A-Za-z][\w-]*:(?:\s|$)/.test(text.slice(end))) return { start: from + blank.index + 1, end };
  }
  return nearly;
}

function next(text: string, from: number, pattern: RegExp): Mark | null {
  const found = pattern.exec(text.slice(from));
  return found && { start: from + found.index, end: from + found.index + found[0].length };
}

function notOpened(source: SourceText, open: Mark | null): Diagnostic {
  const end = source.text.search(/\r?\n|$/);
  const blankFirst = open !== null && EXACT.test(source.text.slice(open.start));
  const hint = blankFirst
    ? 'Take out what stands before `---`: it must be the first line.'
    : open
      ? 'Write three plain hyphens at the start of the line: `---`.'
      : 'Begin with three lines: `---`, `date: 2031-03-12`, `title: What was done`, and close with another `---`.';
  const place =
    open && !blankFirst
      ? source.place(open.start, open.start + source.text.slice(open.start, open.end).trimEnd().length)
      : source.place(0, end);
  return diagnostic('A205', place, 'A note begins with a line `---`; this one does not.', { hint });
}

function notClosed(source: SourceText, open: Mark, close: Mark | null): Diagnostic {
  const meant = close === null ? '' : source.text.slice(close.start, close.end).trim();
  if (close !== null && meant !== '') {
    const place = source.place(close.start, close.start + source.text.slice(close.start, close.end).trimEnd().length);
    const hint = 'Write three plain hyphens at the start of the line: `---`.';
    return diagnostic('A206', place, 'The front matter is closed with a line `---`; this one is another.', { hint });
  }
  const place = source.place(open.start, open.start + source.text.slice(open.start, open.end).trimEnd().length);
  const hint = 'Put a line `---` under the last field.';
  return diagnostic('A206', place, 'The front matter that opens here is never closed.', { hint });
}
