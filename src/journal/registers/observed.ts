import { CONDITION_WORDS, type PartEntry } from '../model.ts';
import { inARow } from '../replay/words.ts';

/** Something that an entry under `parts` may have written down of the part it touches. */
export interface ObservedField {
  /** What a page calls it; null for what is said without a name. */
  readonly label: string | null;
  /** It is told of the part for good, not of what was to happen next. */
  readonly lasts: boolean;
  /** What the entry says of it; null for nothing. */
  words(entry: PartEntry): string | null;
}

/**
 * Everything that an entry may observe. The page of the session and the page of the position show all of it, in this
 * order, and an entry that says any of it is an observation of its part.
 */
export const OBSERVED: readonly ObservedField[] = [
  { label: null, lasts: true, words: ({ note }) => note },
  {
    label: 'Condition',
    lasts: true,
    words: ({ condition }) => (condition === null ? null : `${condition}, ${CONDITION_WORDS[condition]}`),
  },
  { label: 'Marks', lasts: true, words: ({ marks }) => marks },
  { label: 'Finish', lasts: true, words: ({ finish }) => finish },
  { label: 'Goes back', lasts: false, words: ({ goesBack }) => goesBack },
  { label: 'In this order', lasts: false, words: ({ stack }) => (stack.length === 0 ? null : inARow(stack)) },
  { label: 'Back as it was', lasts: false, words: ({ asWas }) => (asWas === null ? null : asWas ? 'yes' : 'no') },
  { label: 'To be done', lasts: false, words: ({ work }) => work },
  { label: 'Torque', lasts: true, words: ({ torque }) => torque?.text ?? null },
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
