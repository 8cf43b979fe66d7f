import { type Forgotten, forgottenAt, forgottenCount } from '../../../journal/registers/forgotten/forgotten.ts';
import type { Sheet } from '../page/sheet.ts';
import { FORGOTTEN_WORDS } from './kinds.ts';

export interface ForgottenPage {
  readonly count: number;
  /** Kinds of which something is left out. */
  readonly some: readonly Forgotten[];
  /** What the others are called. */
  readonly none: readonly string[];
}

/** What the notes leave out, as they stand now. */
export function forgottenPage({ record }: Sheet): ForgottenPage {
  const all = forgottenAt(record, null);
  return {
    count: forgottenCount(record, null),
    some: all.filter(({ missed }) => missed.length > 0),
    none: all.filter(({ missed }) => missed.length === 0).map(({ kind }) => FORGOTTEN_WORDS[kind].head.toLowerCase()),
  };
}
