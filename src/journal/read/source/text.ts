import { type Diagnostic, diagnostic, startOf } from '../../diagnostics/diagnostic.ts';
import type { Place } from '../../diagnostics/place.ts';
import type { SourceFile } from './sources.ts';

/** A file's text, with its offsets turned into lines and columns (both from 1). */
export interface SourceText {
  readonly file: string;
  readonly text: string;
  place(start: number, end: number): Place;
  /** The offset of a line and column, both from 1. */
  offset(line: number, column: number): number;
}

/** Anything larger is no note; an evening's note is a few kilobytes. */
export const LARGEST_TEXT = 1_000_000;

/**
 * Decodes a file as UTF-8, strictly. A byte order mark and CRLF are accepted; the mark is reported.
 *
 * @returns the text, or null with the reason among the diagnostics
 */
export function decode(source: SourceFile): { text: SourceText | null; diagnostics: Diagnostic[] } {
  const file = source.path;
  const start = startOf(file);
  if (source.bytes.length > LARGEST_TEXT) {
    const size = (source.bytes.length / 1_000_000).toFixed(1);
    const message = `This file is ${size} MB; a note or catalogue may have 1 MB.`;
    return { text: null, diagnostics: [diagnostic('A104', start, message, { hint: 'Keep pictures and film in files of their own.' })] };
  }
  const wide = wideEncoding(source.bytes);
  if (wide !== null) {
    const message = `This file is in ${wide}, not in UTF-8.`;
    return { text: null, diagnostics: [diagnostic('A102', start, message, { hint: 'Save it again with the encoding UTF-8.' })] };
  }
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true }).decode(source.bytes);
  } catch {
    return { text: null, diagnostics: [notUtf8(source)] };
  }
  if (text.trim() === '') {
    return { text: null, diagnostics: [diagnostic('A103', start, 'The file is empty.', { hint: emptyHint(file) })] };
  }
  const diagnostics = text.startsWith('\uFEFF')
    ? [diagnostic('A108', start, 'The file begins with a byte order mark.', { hint: 'Save it as UTF-8 without one.' })]
    : [];
  const written = sourceText(file, withLineFeeds(text.startsWith('\uFEFF') ? text.slice(1) : text));
  const control = firstControl(written);
  if (control === null) return { text: written, diagnostics };
  return { text: sourceText(file, written.text.replaceAll(CONTROLS, ' ')), diagnostics: [...diagnostics, control] };
}

/** What no text holds: C0 without tab and line ends, DEL and C1 (Unicode, chapter 23.1), and marks that turn the order of letters round. */
const CONTROLS = /[^\P{Cc}\t\n\r]|[\u202a-\u202e\u2066-\u2069]/gu;

/** Told once for a file, at the first; each is read as a space. */
function firstControl({ text, place }: SourceText): Diagnostic | null {
  const at = text.search(CONTROLS);
  if (at === -1) return null;
  const count = text.match(CONTROLS)?.length ?? 1;
  return controlFound(text.codePointAt(at) ?? 0, place(at, at + 1), count > 1 ? ` There are ${count} in this file.` : '');
}

/** @param more said after it */
export function controlFound(code: number, place: Place, more = ''): Diagnostic {
  const name = `U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
  return diagnostic('A111', place, `A control character stands here (${name}), which nobody can see.${more}`, { hint: 'Take it out.' });
}

/** Whether a text holds what no text should. */
export function holdsControls(text: string): boolean {
  return text.search(CONTROLS) !== -1;
}

/** A carriage return alone, which ended lines long ago, ends them here too. */
function withLineFeeds(text: string): string {
  return text.includes('\r') ? text.replace(/\r(?!\n)/g, '\n') : text;
}

/** UTF-16, by its mark or by the zero that is half of every letter at the start. */
function wideEncoding([first, second]: Uint8Array): string | null {
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) return 'UTF-16';
  return first !== undefined && second !== undefined && (first === 0) !== (second === 0) ? 'UTF-16' : null;
}

/** Wraps a text so that offsets in it can be placed. */
export function sourceText(file: string, text: string): SourceText {
  let starts: number[] | null = null;
  const known = (): readonly number[] => {
    starts ??= lineStarts(text);
    return starts;
  };
  const at = (offset: number): [number, number] => {
    const starts = known();
    const line = lastAtOrBefore(starts, offset);
    return [line + 1, offset - (starts[line] ?? 0) + 1];
  };
  return {
    file,
    text,
    place(start, end) {
      const [line, column] = at(start);
      const [endLine, endColumn] = at(Math.max(start, end));
      return { file, line, column, endLine, endColumn };
    },
    offset: (line, column) => Math.min((known()[line - 1] ?? text.length) + column - 1, text.length),
  };
}

function lineStarts(text: string): number[] {
  const starts = [0];
  for (let i = text.indexOf('\n'); i !== -1; i = text.indexOf('\n', i + 1)) starts.push(i + 1);
  return starts;
}

function lastAtOrBefore(starts: readonly number[], offset: number): number {
  let low = 0;
  let high = starts.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((starts[middle] ?? 0) <= offset) low = middle;
    else high = middle - 1;
  }
  return low;
}

function notUtf8(source: SourceFile): Diagnostic {
  const { offset, line, column } = firstBadByte(source.bytes);
  const byte = source.bytes[offset];
  const shown = byte === undefined ? '' : ` (0x${byte.toString(16).padStart(2, '0')})`;
  const place = { file: source.path, line, column, endLine: line, endColumn: column + 1 };
  return diagnostic('A102', place, `The byte here${shown} is not UTF-8 text.`, {
    hint: 'Save the file again with the encoding UTF-8.',
  });
}

/** Finds where decoding first fails: the longest prefix that decodes, by halving. */
function firstBadByte(bytes: Uint8Array): { offset: number; line: number; column: number } {
  const decodes = (end: number): boolean => {
    try {
      new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(0, end), { stream: true });
      return true;
    } catch {
      return false;
    }
  };
  let low = 0;
  let high = bytes.length;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (decodes(middle)) low = middle;
    else high = middle - 1;
  }
  // A sequence that is only begun still counts as decoding, so the fault is where its first byte stands.
  while (low > 0 && (bytes[low - 1] ?? 0) >= 0x80 && !decodesWhole(bytes, low)) low -= 1;
  const before = new TextDecoder('utf-8').decode(bytes.subarray(0, low));
  const lineStart = before.lastIndexOf('\n') + 1;
  return { offset: low, line: before.split('\n').length, column: before.length - lineStart + 1 };
}

function decodesWhole(bytes: Uint8Array, end: number): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes.subarray(0, end));
    return true;
  } catch {
    return false;
  }
}

function emptyHint(file: string): string {
  return file.startsWith('sessions/') ? 'Write the note, or delete the file.' : 'Fill it, or delete the file.';
}
