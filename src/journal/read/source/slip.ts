/** What somebody typed by mistake, and what it was meant to be. */
import type { Edit } from './mended-text.ts';

/** A slip on one line. Offsets are within the YAML. */
export interface Slip {
  readonly code: 'A201' | 'A202' | 'A208';
  readonly start: number;
  readonly end: number;
  readonly message: string;
  readonly hint: string;
  /** With these the text reads as it was meant. */
  readonly edits: readonly Edit[];
}

/** The first of each kind on a line; the others are mended with it. */
export function oneOfAKind(slips: readonly Slip[]): Slip[] {
  const kinds = new Map<string, Slip>();
  for (const slip of slips) {
    const kind = slip.message.replaceAll(/`[^`]*`/g, '');
    const first = kinds.get(kind);
    kinds.set(kind, first ? { ...first, edits: [...first.edits, ...slip.edits] } : slip);
  }
  return [...kinds.values()];
}
