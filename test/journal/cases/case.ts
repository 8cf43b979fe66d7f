import type { Code } from '../../../src/journal/diagnostics/catalogue.ts';
import type { Files } from '../base.ts';

/** A journal with one fault. */
export interface Case {
  /** What goes wrong, as a sentence. */
  readonly shows: string;
  readonly code: Code;
  /** Front matter of the one note, under its date and title. */
  readonly note?: string;
  readonly prose?: string;
  readonly files?: Files;
  /** The text that the diagnostic's place begins with; the start of the file when absent. */
  readonly at?: string;
  /** The file it is in; the one note when absent. */
  readonly file?: string;
  /** Words that the message must hold. */
  readonly says?: RegExp;
  /** Words that the hint must hold. */
  readonly hint?: RegExp;
  /** The text that the first of two contradicting places begins with. */
  readonly first?: string;
  /** It is reported once, not at each of its places. */
  readonly once?: boolean;
}
