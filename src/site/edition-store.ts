/** What follows from the program alone, kept for as long as its edition: code that was compiled for it, never anything of a journal. */
import { createHash } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readKept, writeKept } from '../disk/kept.ts';
import { PROGRAM, toolDigest } from './tool-digest.ts';
import { packagesFolder } from './workshop.ts';

/** Texts by the path of each file. */
export type Texts = Readonly<Record<string, string>>;

export interface EditionStore {
  /** What this edition kept; null when it kept nothing, or what it kept is not as it was written. */
  read(name: EditionPart): Texts | null;
  /** Keeps it in the place of what another edition kept. What cannot be written is not kept; that is no error. */
  write(name: EditionPart, texts: Texts): void;
  /** Where what is kept may be laid as files; other programs and parts have others. */
  folderFor(name: EditionPart): string;
}

/** The code that makes pages, and the scripts that they load. */
export type EditionPart = 'pages' | 'scripts';

/**
 * @param cache the cache folder; it need not exist. `ASFOUND_EDITION` names a folder in its place, which several caches then share
 */
export function editionStore(cache: string, edition: string = editionDigest()): EditionStore {
  const folder = process.env.ASFOUND_EDITION || join(cache, 'edition');
  const folderFor = (name: EditionPart): string => join(folder, `${digest([PROGRAM]).slice(0, 16)}-${name}`);
  const fileOf = (name: EditionPart): string => `${folderFor(name)}.json`;
  const whatIs = (name: EditionPart): string => `${name} 1 ${edition}`;
  return {
    folderFor,
    read: (name) => (readKept(fileOf(name), whatIs(name)) as Texts | undefined) ?? null,
    write: (name, texts) => {
      try {
        writeKept(fileOf(name), whatIs(name), texts);
      } catch {
        // A cache that cannot be written costs time and nothing else.
      }
    },
  };
}

/** Changes with every file of the program, where it lies, the packages beside it, and the Node that runs it. */
export function editionDigest(): string {
  return digest([toolDigest(), PROGRAM, packagesDigest(), process.version]);
}

/** npm lists what it installed in a file among the packages; without it, the lock file is what they were installed by. */
function packagesDigest(): string {
  const lists = [join(packagesFolder(), '.package-lock.json'), join(PROGRAM, 'package-lock.json')];
  return digest(lists.filter((file) => existsSync(file)).map((file) => readFileSync(file)));
}

function digest(pieces: readonly (string | Uint8Array)[]): string {
  const hash = createHash('sha256');
  for (const piece of pieces) hash.update(piece).update('\0');
  return hash.digest('hex');
}
