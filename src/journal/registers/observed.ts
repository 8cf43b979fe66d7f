import { CONDITION_WORDS, type PartEntry } from '../model.ts';

/** Something that an entry under `parts` may have written down of the part it touches. */
export interface ObservedField {
  /** What a page calls it; null for what is said without a name. */
  readonly label: string | null;
  /** What the entry says of it; null for nothing. */
  words(entry: PartEntry): string | null;
}

/**
 * Everything that an entry may observe. The page of the session and the page of the position show all of it, in this
 * order, and an entry that says any of it is an observation of its part.
 */
export const OBSERVED: readonly ObservedField[] = [
  { label: null, words: ({ note }) => note },
  { label: 'Condition', words: ({ condition }) => (condition === null ? null : `${condition}, ${CONDITION_WORDS[condition]}`) },
  { label: 'Marks', words: ({ marks }) => marks },
  { label: 'Finish', words: ({ finish }) => finish },
  { label: 'Goes back', words: ({ goesBack }) => goesBack },
  { label: 'In this order', words: ({ stack }) => (stack.length === 0 ? null : stack.join(', ')) },
  { label: 'Back as it was', words: ({ asWas }) => (asWas === null ? null : asWas ? 'yes' : 'no') },
  { label: 'To be done', words: ({ work }) => work },
  { label: 'Due', words: ({ due }) => due },
  { label: 'Torque', words: ({ torque }) => torque?.text ?? null },
];

/** What an entry says of one field. */
export interface Seen {
  readonly label: string | null;
  readonly words: string;
}

/** What an entry observes of its part, in the order of the table. */
export function seenIn(entry: PartEntry): readonly Seen[] {
  return OBSERVED.flatMap(({ label, words }) => {
    const said = words(entry);
    return said === null ? [] : [{ label, words: said }];
  });
}
