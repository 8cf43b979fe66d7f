import type { Diagnostic } from './diagnostic.ts';
import type { Place } from './place.ts';
import { sourceFrame, visible } from './source-frame.ts';

/** How each kind of text is drawn; every function gives back its text with or without colour. */
export interface Paint {
  readonly error: (text: string) => string;
  readonly warning: (text: string) => string;
  readonly faint: (text: string) => string;
  readonly strong: (text: string) => string;
}

const same = (text: string): string => text;
/** No colour at all. */
export const PLAIN: Paint = { error: same, warning: same, faint: same, strong: same };

export interface FormatOptions {
  readonly paint: Paint;
  /** The text of a file of the journal; null when it is not to be had. */
  readonly sourceOf: (file: string) => string | null;
  /** How the path of a file is shown: from where the reader stands. */
  readonly pathOf: (file: string) => string;
}

/**
 * A diagnostic as text for people: place, severity, code and message; the source with the place
 * underlined; the other places; the repair.
 *
 * @returns several lines without a line end after the last
 */
export function formatDiagnostic(found: Diagnostic, options: FormatOptions): string {
  const { paint, pathOf } = options;
  const severity = paint[found.severity](`${found.severity} ${found.code}`);
  return [
    `${paint.strong(placeText(found.place, pathOf))}  ${severity}  ${visible(found.message)}`,
    ...frameLines(found.place, options),
    ...found.related.map((other) => `  ${paint.faint('see')} ${placeText(other.place, pathOf)}  ${visible(other.message)}`),
    ...(found.hint === null ? [] : [`  ${visible(found.hint)}`]),
  ].join('\n');
}

/** All of them, a blank line between two; '' when there are none. */
export function formatDiagnostics(found: readonly Diagnostic[], options: FormatOptions): string {
  return found.map((one) => `${formatDiagnostic(one, options)}\n`).join('\n');
}

/** `3 errors, 1 warning in 48 notes`; `no errors, no warnings in 1 note`. */
export function countsText(found: readonly Diagnostic[], notes: number): string {
  const errors = found.filter((one) => one.severity === 'error').length;
  return `${countOf(errors, 'error')}, ${countOf(found.length - errors, 'warning')} in ${countOf(notes, 'note')}`;
}

/** A file of several places reads `path:line:column`, as editors and terminals understand it. */
export function placeText(place: Place, pathOf: (file: string) => string): string {
  return `${visible(pathOf(place.file))}:${place.line}:${place.column}`;
}

function countOf(n: number, word: string): string {
  return `${n === 0 ? 'no' : n} ${word}${n === 1 ? '' : 's'}`;
}

function frameLines(place: Place, { paint, sourceOf }: FormatOptions): string[] {
  const frame = sourceFrame(sourceOf(place.file) ?? '', place);
  const width = Math.max(0, ...frame.map((line) => line.gutter.length));
  return frame.map((line) => {
    const text = line.kind === 'marks' ? paint.error(line.text) : line.text;
    return `  ${paint.faint(`${line.gutter.padStart(width)} |`)} ${text}`.trimEnd();
  });
}
