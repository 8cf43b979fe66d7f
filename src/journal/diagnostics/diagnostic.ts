import { CATALOGUE, type Code } from './catalogue.ts';
import type { Place } from './place.ts';

export type Severity = 'error' | 'warning';

/** Another place that belongs to the same problem: the first of two that contradict each other. */
export interface Related {
  readonly place: Place;
  readonly message: string;
}

/** One problem of one file. The shape is the same for every stage and every output. */
export interface Diagnostic {
  readonly code: Code;
  readonly severity: Severity;
  readonly message: string;
  readonly place: Place;
  /** The repair, said as something to do. */
  readonly hint: string | null;
  readonly related: readonly Related[];
}

/**
 * Makes a diagnostic from the catalogue.
 *
 * @param code its permanent code
 * @param place where it is
 * @param message what was found and what was expected
 * @param more the repair and other places, where there are any
 */
export function diagnostic(
  code: Code,
  place: Place,
  message: string,
  more: { readonly hint?: string | null; readonly related?: readonly Related[] } = {},
): Diagnostic {
  return {
    code,
    severity: CATALOGUE[code].severity,
    message,
    place,
    hint: more.hint ?? null,
    related: more.related ?? [],
  };
}

/** File order, then line, column and code, so that a run always prints the same. */
export function inFileOrder(a: Diagnostic, b: Diagnostic): number {
  return (
    compareText(a.place.file, b.place.file) ||
    a.place.line - b.place.line ||
    a.place.column - b.place.column ||
    compareText(a.code, b.code) ||
    compareText(a.message, b.message)
  );
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** The start of a file, for what concerns the whole of it. */
export function startOf(file: string): Place {
  return { file, line: 1, column: 1, endLine: 1, endColumn: 1 };
}
