/** The proof of a copy: nothing that it withholds stands in any file that would be published. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { folded, type Withheld } from '../../journal/copy/withheld.ts';
import { type FileFilter, fileFilter } from './letters-filter.ts';
import { anyOf, mayHold, type Sought, standing } from './patterns.ts';
import type { ProvedBefore, Words } from './proved-before.ts';
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
export const ENOUGH = 20;

export interface HowToLook {
  progress?(done: number, total: number): void;
  /** Texts of files that the program brings, which hold its words and nothing of a journal: those are not looked through. */
  readonly own?: readonly string[];
  /** What was looked through for the same and has not changed is not looked through again. */
  readonly before?: ProvedBefore;
}

/**
 * Looks through every file of a folder, whatever it is.
 *
 * @param folder a site that is not yet published
 */
export async function leaksIn(
  folder: string,
  withheld: readonly Withheld[],
  { progress = () => undefined, own = [], before }: HowToLook = {},
): Promise<readonly Leak[]> {
  if (withheld.length === 0) return [];
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const brought = new Set(own);
  const proof = new Proof(withheld);
  for (const [n, entry] of files.entries()) {
    if (proof.found >= ENOUGH) break;
    progress(n, files.length);
    const path = join(entry.parentPath, entry.name);
    const file = path.slice(folder.length + 1);
    let words = before?.unread(file, path);
    if (words === undefined) {
      const bytes = readFileSync(path);
      if (brought.size > 0 && path.endsWith('.js') && brought.has(bytes.toString('utf8'))) continue;
      words = before?.read(file, path, bytes);
      if (words === undefined) {
        const looked = await proof.look(file, bytes);
        if (looked.clean) before?.isClean(file, looked.words);
        continue;
      }
    }
    proof.meet(words);
  }
  before?.save();
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
  readonly #sought: Readonly<Record<TextKind, Sought>>;
  readonly #small: Sought;
  /** Any of them all, and of those in small letters. */
  readonly #any: FileFilter;
  /** Words that stand in small letters in what is published: with a capital they begin a sentence as well as a name. */
  readonly #words = new Set<string>();
  readonly #leaks: Leak[] = [];

  constructor(withheld: readonly Withheld[]) {
    const of = (...kinds: readonly Withheld['as'][]) => anyOf(withheld.filter(({ as }) => kinds.includes(as)));
    const numbers = ['word', 'number'] as const;
    this.#byText = new Map(withheld.map((one) => [one.text, one]));
    this.#sought = { bytes: of(undefined), marked: of(undefined, ...numbers), prose: of(undefined, ...numbers, 'sum') };
    const capitals = withheld.filter(({ text, as }) => as === 'word' && text !== text.toLowerCase() && !HAS_DIGIT.test(text));
    const small = capitals.map((one) => ({ ...one, text: one.text.toLowerCase() }));
    this.#small = anyOf(small);
    this.#any = fileFilter([...withheld, ...small]);
  }

  /** In how many places something surely stands. */
  get found(): number {
    return this.#leaks.filter((leak) => !this.#isPerhaps(leak)).length;
  }

  /** Words that stand in small letters somewhere. */
  meet(words: Words): void {
    for (const word of words) this.#words.add(word);
  }

  /** @returns whether nothing stands in it, and the words that it says in small letters */
  async look(file: string, bytes: Uint8Array): Promise<{ readonly clean: boolean; readonly words: Words }> {
    const found = new Map<string, Leak>();
    const said = new Set<string>();
    for await (const { text: unfolded, kind } of eachText(file, bytes, this.#any)) {
      const sought = this.#sought[kind];
      const words = kind === 'prose' && mayHold(unfolded, this.#small);
      if (!words && !mayHold(unfolded, sought)) continue;
      const text = folded(unfolded);
      if (words) for (const [word] of standing(text, this.#small)) said.add(word);
      const read = kind === 'marked' ? text.replace(NO_WORDS, '') : text;
      for (const [match, index] of standing(read, sought)) {
        const withheld = this.#byText.get(match);
        if (withheld === undefined || found.has(match)) continue;
        const there = read.slice(Math.max(0, index - 30), index + match.length + 30);
        found.set(match, { file, withheld, there, perhaps: withheld.as === 'number' });
      }
    }
    this.#leaks.push(...found.values());
    this.meet([...said]);
    return { clean: found.size === 0, words: [...said] };
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
