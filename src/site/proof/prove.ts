/** The proof of a copy: nothing that it withholds stands in any file that would be published. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Withheld } from '../../journal/copy/withheld.ts';
import { eachText, type TextKind } from './published-texts.ts';

export interface Leak {
  /** From the root of the site. */
  readonly file: string;
  readonly withheld: Withheld;
  /** Some words round it, as they stand there. */
  readonly there: string;
  /** It may be something else: a word or a number of these pages, or a measurement. It is told, and keeps nothing from being published. */
  readonly perhaps: boolean;
}

/** More than so many are not looked for further: one is enough to publish nothing. */
const ENOUGH = 20;

/**
 * Looks through every file of a folder, whatever it is.
 *
 * @param folder a site that is not yet published
 * @param own texts of files that the program brings, which hold its words and nothing of a journal: those are not looked through
 */
export async function leaksIn(
  folder: string,
  withheld: readonly Withheld[],
  progress: (done: number, total: number) => void = () => undefined,
  own: readonly string[] = [],
): Promise<readonly Leak[]> {
  if (withheld.length === 0) return [];
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const brought = new Set(own);
  const proof = new Proof(withheld);
  for (const [n, entry] of files.entries()) {
    if (proof.found >= ENOUGH) break;
    progress(n, files.length);
    const path = join(entry.parentPath, entry.name);
    const bytes = readFileSync(path);
    if (brought.size > 0 && path.endsWith('.js') && brought.has(bytes.toString('utf8'))) continue;
    await proof.look(path.slice(folder.length + 1), bytes);
  }
  return proof.leaks();
}

/** Looks through one file. @param file its name, which is looked through too */
export async function leaksOfFile(file: string, bytes: Uint8Array, withheld: readonly Withheld[]): Promise<readonly Leak[]> {
  if (withheld.length === 0) return [];
  const proof = new Proof(withheld);
  await proof.look(file, bytes);
  return proof.leaks();
}

/** What was found in files looked through one after the other. */
class Proof {
  readonly #byText: ReadonlyMap<string, Withheld>;
  readonly #patterns: Readonly<Record<TextKind, RegExp>>;
  readonly #small: RegExp;
  /** Words that stand in small letters in what is published: with a capital they begin a sentence as well as a name. */
  readonly #words = new Set<string>();
  readonly #leaks: Leak[] = [];

  constructor(withheld: readonly Withheld[]) {
    const of = (...kinds: readonly Withheld['as'][]) => anyOf(withheld.filter(({ as }) => kinds.includes(as)));
    const numbers = ['word', 'number'] as const;
    this.#byText = new Map(withheld.map((one) => [one.text, one]));
    this.#patterns = { bytes: of(undefined), marked: of(undefined, ...numbers), prose: of(undefined, ...numbers, 'sum') };
    const capitals = withheld.filter(({ text, as }) => as === 'word' && text !== text.toLowerCase() && !HAS_DIGIT.test(text));
    this.#small = anyOf(capitals.map((one) => ({ ...one, text: one.text.toLowerCase() })));
  }

  /** In how many places something surely stands. */
  get found(): number {
    return this.#leaks.filter((leak) => !this.#isPerhaps(leak)).length;
  }

  async look(file: string, bytes: Uint8Array): Promise<void> {
    const found = new Map<string, Leak>();
    for await (const { text, kind } of eachText(file, bytes)) {
      if (kind === 'prose') for (const [word] of standing(text, this.#small)) this.#words.add(word);
      const read = kind === 'marked' ? text.replace(NO_WORDS, '') : text;
      for (const [match, index] of standing(read, this.#patterns[kind])) {
        const withheld = this.#byText.get(match);
        if (withheld === undefined || found.has(match)) continue;
        const there = read.slice(Math.max(0, index - 30), index + match.length + 30);
        found.set(match, { file, withheld, there, perhaps: withheld.as === 'number' });
      }
    }
    this.#leaks.push(...found.values());
  }

  /** Those that are sure, each place; and of what may be something else the first place. */
  leaks(): readonly Leak[] {
    const told = this.#leaks.map((leak) => ({ ...leak, perhaps: this.#isPerhaps(leak) }));
    const sure = told.filter(({ perhaps }) => !perhaps);
    const surely = new Set(sure.map(({ withheld }) => withheld.text));
    const firsts = new Map(told.toReversed().map((leak) => [leak.withheld.text, leak]));
    return [...sure, ...[...firsts.values()].filter(({ withheld }) => !surely.has(withheld.text)).toReversed()];
  }

  #isPerhaps({ perhaps, withheld }: Leak): boolean {
    return perhaps || (withheld.as === 'word' && this.#words.has(withheld.text.toLowerCase()));
  }
}

const HAS_DIGIT = /\d/u;
/** Attributes of markup that hold lines of a drawing and codes; lines of a drawing in a script. */
const NO_WORDS = /\s(?:d|points|transform|viewBox|style|lang|integrity)="[^"]*"|"[Mm] ?-?[\d.][-\d.,\sMmLlHhVvCcSsQqTtAaZzEe]*"/gu;

const WORD = String.raw`[\p{L}\p{N}\p{M}]`;
const BEGINS_IN_WORD = new RegExp(`${WORD}$`, 'u');
const IN_WORD = new RegExp(`^${WORD}`, 'u');

/** A pattern of any of some texts, or of none where there are none. What goes on as a longer word or number is another one. */
function anyOf(withheld: readonly Withheld[]): RegExp {
  if (withheld.length === 0) return /(?!)/gu;
  const patterns = withheld.map(({ text, as }) => {
    const ends =
      as === 'sum' ? String.raw`(?![.,]?\d)` : as === 'number' ? `(?!${WORD}|[.,]\\d)` : IN_WORD.test(text.slice(-1)) ? `(?!${WORD})` : '';
    return text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&') + ends;
  });
  return new RegExp(patterns.join('|'), 'gu');
}

/** A sum that came in stands with it before it, as a page writes it, and is another one. */
const MINUS = '\u2212';

/** Each place where one of the texts stands, and not as the end of a longer word or number. */
function* standing(text: string, pattern: RegExp): Generator<readonly [match: string, index: number]> {
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
