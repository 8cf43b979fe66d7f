/** How withheld texts are looked for. */
import { composed, type Withheld } from '../../journal/copy/withheld.ts';
import { textFilter } from './letters-filter.ts';

export interface Sought {
  /** Any of the texts, in a text whose white space is folded. */
  readonly pattern: RegExp;
  /** Whether one of them may stand in a text that is not. */
  readonly filter: (text: string) => boolean;
  /** The same for those that the filter does not know; null where there are none. */
  readonly short: RegExp | null;
}

const HAS_DIGIT = /\d/u;
const WORD = String.raw`[\p{L}\p{N}\p{M}]`;
const BEGINS_IN_WORD = new RegExp(`${WORD}$`, 'u');
const IN_WORD = new RegExp(`^${WORD}`, 'u');

/** Patterns of any of some texts, or of none where there are none. What goes on as a longer word or number is another one. */
export function anyOf(withheld: readonly Withheld[]): Sought {
  const { filter, without } = textFilter(withheld);
  return {
    pattern: anyIn(withheld.map((one) => escaped(one.text) + endOf(one))),
    filter,
    short: without.length === 0 ? null : anyIn(without.map((one) => escaped(one.text).replaceAll(' ', String.raw`\s+`) + endOf(one))),
  };
}

const anyIn = (patterns: readonly string[]): RegExp => new RegExp(patterns.length === 0 ? '(?!)' : patterns.join('|'), 'gu');
const escaped = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&');

function endOf({ text, as }: Withheld): string {
  if (as === 'sum') return String.raw`(?![.,]?\d)`;
  if (as === 'number') return `(?!${WORD}|[.,]\\d)`;
  return IN_WORD.test(text.slice(-1)) ? `(?!${WORD})` : '';
}

/** False where none of the texts can stand in it as it stands, whatever becomes of its white space and its accents. */
export function mayHold(text: string, { filter, short }: Sought): boolean {
  return filter(text) || (short !== null && composed(text).search(short) >= 0);
}

/** A sum that came in stands with it before it, as a page writes it, and is another one. */
const MINUS = '\u2212';

/** Each place in a folded text where one of the texts stands, and not as the end of a longer word or number. */
export function* standing(text: string, { pattern }: Sought): Generator<readonly [match: string, index: number]> {
  pattern.lastIndex = 0;
  for (let found = pattern.exec(text); found !== null; found = pattern.exec(text)) {
    const [{ 0: match, index }, before] = [found, text.slice(Math.max(0, found.index - 2), found.index)];
    const isOther = HAS_DIGIT.test(match) && before.endsWith(MINUS);
    const continued =
      isOther || (IN_WORD.test(match) && (BEGINS_IN_WORD.test(before) || (HAS_DIGIT.test(match[0] ?? '') && /\d[.,]$/u.test(before))));
    if (continued) pattern.lastIndex = index + 1;
    else yield [match, index];
  }
}
