import type { ForgottenKind } from '../../../journal/registers/forgotten/forgotten.ts';

/** What each kind is called, and how what is left out is made good. */
export const FORGOTTEN_WORDS: Readonly<Record<ForgottenKind, { readonly head: string; readonly how: string }>> = {
  unrecorded: {
    head: 'Parts without marks or a picture',
    how: 'Its marks in its entry (none where it has none), or a picture, of that evening or later, whose entry shows it.',
  },
  'not-confirmed': {
    head: 'Parts that went back, as they were or not',
    how: 'How each goes back was written down; the entry that fitted it says yes, or no with a note.',
  },
  fasteners: {
    head: 'Fasteners missing from a bag',
    how: 'The entry of the bag holds them too, or the bag that holds them is filled in that note.',
  },
  'full-bags': { head: 'Bags that were never emptied', how: 'The note of the evening says so; then the number is free again.' },
  bills: { head: 'Bills without paper', how: 'A photograph of the bill will do, laid into papers.' },
  pictures: { head: 'Pictures without words', how: 'A few words of what it shows; in thirty years nobody can ask.' },
  clips: { head: 'Clips without marks', how: 'The time in the clip, and the parts that it shows from there.' },
  reasons: { head: 'Decisions without a reason', how: 'The reason is what is asked for first, and forgotten first.' },
  undecided: { head: 'Candidates that nobody decided on', how: 'A decision in tonight’s note: replace, keep, or defer with the reason.' },
  bought: {
    head: 'Bought, and never said to have come',
    how: 'The note of the evening it came says acquired, or made, and where it lies.',
  },
  'past-due': { head: 'Promised for a day that has passed', how: 'Tonight’s note closes it, or tells that the part came back.' },
  named: {
    head: 'Parts that only the prose names',
    how: 'A link around the words puts the note onto the page of the part; an entry under parts does more.',
  },
};
