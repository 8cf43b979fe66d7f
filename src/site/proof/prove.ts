/** The proof of a copy: nothing that it withholds stands in any file that would be published. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Withheld } from '../../journal/copy/withheld.ts';
import { once } from '../../journal/values/once.ts';
import { eachText } from './published-texts.ts';

export interface Leak {
  /** From the root of the site. */
  readonly file: string;
  readonly withheld: Withheld;
  /** Some words round it, as they stand there. */
  readonly there: string;
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
  const leaks: Leak[] = [];
  for (const [n, entry] of files.entries()) {
    if (leaks.length >= ENOUGH) break;
    progress(n, files.length);
    const path = join(entry.parentPath, entry.name);
    const bytes = readFileSync(path);
    if (brought.size > 0 && path.endsWith('.js') && brought.has(bytes.toString('utf8'))) continue;
    leaks.push(...(await leaksOfFile(path.slice(folder.length + 1), bytes, withheld)));
  }
  return leaks;
}

const patternOf = once(
  (withheld: readonly Withheld[]) => new RegExp(withheld.map(({ text }) => text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&')).join('|'), 'gu'),
);

/** Looks through one file. @param file its name, which is looked through too */
export async function leaksOfFile(file: string, bytes: Uint8Array, withheld: readonly Withheld[]): Promise<readonly Leak[]> {
  if (withheld.length === 0) return [];
  const found = new Map<string, string>();
  for await (const text of eachText(file, bytes)) {
    for (const { 0: match, index } of text.matchAll(patternOf(withheld))) {
      if (stands(text, match, index) && !found.has(match)) found.set(match, text.slice(Math.max(0, index - 30), index + match.length + 30));
    }
  }
  return withheld.flatMap((one) => {
    const there = found.get(one.text);
    return there === undefined ? [] : [{ file, withheld: one, there }];
  });
}

const LETTER = /[\p{L}\p{N}]/u;

/** A part of a longer word or number is another word. */
function stands(text: string, match: string, index: number): boolean {
  const [before, after] = [text[index - 1] ?? '', text[index + match.length] ?? ''];
  return !(LETTER.test(match[0] ?? '') && LETTER.test(before)) && !(LETTER.test(match.at(-1) ?? '') && LETTER.test(after));
}
