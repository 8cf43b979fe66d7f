/** How withheld texts are looked for. */
import type { Withheld } from '../../journal/copy/withheld.ts';
import { type TextFilter, textFilter } from './text-filter.ts';

export interface Sought {
  /** Any of the texts, in a text whose white space is folded. */
  readonly pattern: RegExp;
  /** Whether one of many may stand in a text as it stands; null where they are few. */
  readonly filter: TextFilter | null;
  /** The same for those that are few, and for short ones among many; null where there are none. */
  readonly short: RegExp | null;
  /** Whether there are others. */
  readonly others: boolean;
}

const HAS_DIGIT = /\d/u;
const WORD = String.raw`[\p{L}\p{N}\p{M}]`;
const BEGINS_IN_WORD = new RegExp(`${WORD}$`, 'u');
const IN_WORD = new RegExp(`^${WORD}`, 'u');

/** Characters that nothing is composed to, so that they stand as themselves in any text, but for those of `TWICE`. */
export const AS_ITSELF = /^[ -\u00bf\u00c6\u00d0\u00d7\u00d8\u00de\u00df\u00e6\u00f0\u00f7\u00f8\u00fe\u2010-\u2027\u20ac\u2212]*$/u;
/** Characters that some other one becomes when a text is composed (Unicode, singleton decompositions). */
export const TWICE: Readonly<Record<string, string>> = {
  K: '\u212a',
  ';': '\u037e',
  '`': '\u1fef',
  '\u00b4': '\u1ffd',
  '\u00b7': '\u0387',
};

/** So few are found sooner by one pattern of all. */
const FEW = 30;

/** Patterns of any of some texts, or of none where there are none. What goes on as a longer word or number is another one. */
export function anyOf(withheld: readonly Withheld[]): Sought {
  const plain = withheld.filter(({ text }) => AS_ITSELF.test(text));
  const { filter, short } = plain.length > FEW ? ofMany(plain) : { filter: null, short: plain };
  return {
    pattern: anyIn(withheld.map((one) => escaped(one.text) + endOf(one))),
    filter,
    short: short.length === 0 ? null : anyIn(short.map((one) => asItStands(one.text) + endOf(one))),
    others: plain.length < withheld.length,
  };
}

function ofMany(plain: readonly Withheld[]): { readonly filter: TextFilter; readonly short: readonly Withheld[] } {
  const { filter, short } = textFilter(new Set(plain.map(({ text }) => text)), TWICE);
  return { filter, short: plain.filter(({ text }) => short.has(text)) };
}

const asItStands = (text: string): string =>
  escaped(text)
    .replaceAll(' ', String.raw`\s+`)
    .replace(/[K;`\u00b4\u00b7]/gu, eitherOf);

const anyIn = (patterns: readonly string[]): RegExp => new RegExp(patterns.length === 0 ? '(?!)' : patterns.join('|'), 'gu');
const escaped = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&');
const eitherOf = (character: string): string => `[${character}${TWICE[character] ?? ''}]`;

function endOf({ text, as }: Withheld): string {
  if (as === 'sum') return String.raw`(?![.,]?\d)`;
  if (as === 'number') return `(?!${WORD}|[.,]\\d)`;
  return IN_WORD.test(text.slice(-1)) ? `(?!${WORD})` : '';
}

/** False where none of the texts can stand in it, whatever becomes of its white space and its accents. */
export function mayHold(text: string, { filter, short, others }: Sought): boolean {
  return others || filter?.(text) === true || (short !== null && text.search(short) >= 0);
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
