/** The proof of a copy: nothing that it withholds stands in any file that would be published. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Withheld } from '../../journal/copy/withheld.ts';
import { textsPublished } from './published-texts.ts';

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
 */
export async function leaksIn(
  folder: string,
  withheld: readonly Withheld[],
  progress: (done: number, total: number) => void = () => undefined,
): Promise<readonly Leak[]> {
  if (withheld.length === 0) return [];
  const by = new Map(withheld.map((one) => [one.text, one]));
  const any = new RegExp(withheld.map(({ text }) => text.replace(/[\\^$.*+?()[\]{}|]/g, '\\$&')).join('|'), 'gu');
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile());
  const leaks: Leak[] = [];
  for (const [n, entry] of files.entries()) {
    progress(n, files.length);
    const path = join(entry.parentPath, entry.name);
    const file = path.slice(folder.length + 1);
    const found = new Map<string, string>();
    for (const text of await textsPublished(file, readFileSync(path))) {
      for (const { 0: match, index } of text.matchAll(any)) {
        if (stands(text, match, index) && !found.has(match))
          found.set(match, text.slice(Math.max(0, index - 30), index + match.length + 30));
      }
    }
    for (const [text, there] of found) {
      const one = by.get(text);
      if (one !== undefined) leaks.push({ file, withheld: one, there });
    }
    if (leaks.length >= ENOUGH) break;
  }
  return leaks;
}

const LETTER = /[\p{L}\p{N}]/u;

/** A part of a longer word or number is another word. */
function stands(text: string, match: string, index: number): boolean {
  const [before, after] = [text[index - 1] ?? '', text[index + match.length] ?? ''];
  return !(LETTER.test(match[0] ?? '') && LETTER.test(before)) && !(LETTER.test(match.at(-1) ?? '') && LETTER.test(after));
}
