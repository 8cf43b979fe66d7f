/**
 * Files in which nothing stands that is withheld, kept from one build to the next: most of a site is what it was. A file is
 * known by its name and every byte of it; a second name of a file that lies in the cache, by what the disk tells of that.
 */
import { createHash } from 'node:crypto';
import { statSync } from 'node:fs';
import { join } from 'node:path';
import { readKept, writeKept } from '../../disk/kept.ts';
import type { Withheld } from '../../journal/copy/withheld.ts';
import { withoutDay } from '../day-mark.ts';
import { editionDigest } from '../edition-store.ts';
import { mayMeetDay } from './day-in-pages.ts';

/** Words that a file says in small letters; they tell whether a withheld one is a word of any page. */
export type Words = readonly string[];

export interface ProvedBefore {
  /** What a file was found to say that has not to be read to be known. @param path on disk */
  unread(file: string, path: string): Words | undefined;
  /** The same, by what is in it. */
  read(file: string, path: string, bytes: Uint8Array): Words | undefined;
  /** Nothing stands in the file that was asked for last. */
  isClean(file: string, words: Words): void;
  /** Keeps the files that were asked for and are clean, and no others. What cannot be written is not kept; that is no error. */
  save(): void;
}

export interface ProofOf {
  /** The cache folder. */
  readonly cache: string;
  /** Names whose site it is: the journal, the copy. */
  readonly site: readonly string[];
  /** The record's day as it stands in pages: another one each evening. */
  readonly day: string;
}

/** What the disk tells of the file, '' where that tells nothing; the digest of what is in it; and its words. */
type Clean = readonly [stamp: string, digest: string, words: Words];

/** @param withheld what is looked for: files that were looked through for anything else are not known */
export function provedBefore({ cache, site, day }: ProofOf, withheld: readonly Withheld[]): ProvedBefore {
  const file = join(cache, 'proofs', `${digestOf(site).slice(0, 16)}.json`);
  const what = `proof 1 ${digestOf([editionDigest(), ...withheld.flatMap(({ text, as }) => [text, as ?? ''])])}`;
  const known = new Map(Object.entries((readKept(file, what) ?? {}) as Readonly<Record<string, Clean>>));
  const clean = new Map<string, Clean>();
  const everyDay = mayMeetDay(withheld, day) ? '' : day;
  let last: readonly [stamp: string, digest: string] = ['', ''];
  const again = (name: string, isSame: (one: Clean) => boolean): Words | undefined => {
    const one = known.get(name);
    if (one === undefined || !isSame(one)) return undefined;
    clean.set(name, [last[0], one[1], one[2]]);
    return one[2];
  };
  return {
    unread: (name, path) => {
      last = [stampOf(path), ''];
      return again(name, ([stamp]) => stamp !== '' && stamp === last[0]);
    },
    read: (name, path, bytes) => {
      last = [stampOf(path), digestOf([name, ...(name.endsWith('.html') ? withoutDay(bytes, everyDay) : [bytes])])];
      return again(name, ([, digest]) => digest === last[1]);
    },
    isClean: (name, words) => void clean.set(name, [...last, words]),
    save: () => {
      try {
        writeKept(file, what, Object.fromEntries(clean));
      } catch {
        // A cache that cannot be written costs time and nothing else.
      }
    },
  };
}

/** Of a file with several names, which was placed and not written; of any other nothing is left when the next site is built. */
function stampOf(path: string): string {
  const { dev, ino, size, mtimeNs, nlink } = statSync(path, { bigint: true });
  return nlink > 1n ? `${dev} ${ino} ${size} ${mtimeNs}` : '';
}

function digestOf(pieces: readonly (string | Uint8Array)[]): string {
  const hash = createHash('sha256');
  for (const piece of pieces) hash.update(piece).update('\0');
  return hash.digest('hex');
}
