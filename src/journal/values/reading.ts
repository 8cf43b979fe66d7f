import type { Code } from '../diagnostics/catalogue.ts';

/**
 * What comes of reading a scalar: a value, or the code and words of a diagnostic that still lacks
 * its place. No reader throws on what somebody wrote.
 */
export type Reading<T> = { readonly ok: true; readonly value: T } | Misread;

/** @property meant a text that is taken, and which the one that stands there was most likely meant for: it is believed */
export interface Misread {
  readonly ok: false;
  readonly code: Code;
  readonly problem: string;
  readonly hint: string;
  readonly meant?: string | null;
}

/** The value was understood. */
export function ok<T>(value: T): Reading<T> {
  return { ok: true, value };
}

/**
 * The value was not understood.
 *
 * @param problem what was found and what was expected
 * @param hint what to type, or to do
 * @param meant the text that the hint offers, where it is one that can be believed
 */
export function bad(code: Code, problem: string, hint: string, meant: string | null = null): Reading<never> {
  return { ok: false, code, problem, hint, meant };
}

/** Text as a message quotes it: on one line, and cut where it is long. */
export function quoted(text: string): string {
  const oneLine = text.replace(/\s+/g, ' ').trim();
  return `‘${oneLine.length > 60 ? `${oneLine.slice(0, 59)}…` : oneLine}’`;
}
