/** Which of a numbered lot is spoken of, in a note and in the catalogue. */
import type { Part, Place } from '../model.ts';
import type { Reporter } from '../read/reporter.ts';

/** What is written: numbers, and how many. */
interface Said {
  readonly which: readonly number[];
  readonly count: number | null;
}

/** The fields they stand under. */
const OF_NOTE = { which: 'which', count: 'count' };
export const AS_FOUND = { which: 'missing-which', count: 'missing' };

/** Which of a numbered lot, each once, smallest first; null where that is not said or cannot be, which is told (A518). */
export function whichOf(
  { which, count }: Said,
  part: Pick<Part, 'id' | 'numbered' | 'count' | 'place'>,
  at: Place,
  out: Reporter,
  named = OF_NOTE,
): readonly number[] | null {
  if (which.length === 0) return null;
  const related = [{ place: part.place, message: `\`${part.id}\` is in the catalogue here.` }];
  if (part.numbered === null) {
    const hint = `Say \`numbered:\` and how they are told apart in its catalogue entry, or \`${named.count}\` here.`;
    out.report('A518', at, `The parts of \`${part.id}\` are not numbered: they are only counted.`, { hint, related });
    return null;
  }
  const beyond = which.find((one) => one > part.count);
  const all = [...new Set(which)].sort((a, b) => a - b);
  if (beyond === undefined && (count === null || count === all.length)) return all;
  const message =
    beyond === undefined
      ? `\`${named.which}\` names ${all.length} of \`${part.id}\`, and \`${named.count}\` says ${count}.`
      : `There is no number ${beyond} of \`${part.id}\`: it has ${part.count}.`;
  const hint = beyond === undefined ? `Leave \`${named.count}\` out.` : `Numbers of \`${part.id}\` go from 1 to ${part.count}.`;
  out.report('A518', at, message, { hint, related });
  return null;
}
