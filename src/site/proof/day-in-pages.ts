/** Whether the record's day, which stands on every page, has anything to do with what is withheld. */
import { folded, type Withheld } from '../../journal/copy/withheld.ts';

const WORD = /[\p{L}\p{N}\p{M}]/u;
/** Nothing of it is written otherwise in any coding. */
const PLAIN = /^[\p{L}\p{N} .,]+$/u;

/**
 * @param day as it stands in pages
 * @returns false only where no withheld text can stand in the day, hold it, or begin or end in it: pages that differ in the day
 *   alone then hold the same withheld texts
 */
export function mayMeetDay(withheld: readonly Withheld[], day: string): boolean {
  const words = folded(day);
  if (!PLAIN.test(words)) return true;
  return withheld.some(({ text }) => {
    const small = words.toLowerCase().includes(text.toLowerCase());
    return small || text.includes(words) || endsIn(text, words) || beginsIn(text, words);
  });
}

/** The end of the text is the beginning of the day, and no word goes on over either of its ends. */
function endsIn(text: string, day: string): boolean {
  return lengthsOf(text, day).some(
    (n) => day.startsWith(text.slice(-n)) && !goesOn(text.at(-1), day[n]) && !goesOn(text.at(-n - 1), day[0]),
  );
}

/** The beginning of the text is the end of the day, and no word goes on over either of its ends. */
function beginsIn(text: string, day: string): boolean {
  return lengthsOf(text, day).some(
    (n) => day.endsWith(text.slice(0, n)) && !goesOn(day.at(-n - 1), text[0]) && !goesOn(day.at(-1), text[n]),
  );
}

const lengthsOf = (text: string, day: string): number[] => Array.from({ length: Math.min(text.length, day.length) }, (_, n) => n + 1);

const goesOn = (character: string | undefined, next: string | undefined): boolean => WORD.test(character ?? '') && WORD.test(next ?? '');
