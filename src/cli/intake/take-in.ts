import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { clearBegun } from '../../disk/clear-begun.ts';
import { digestOf } from '../../photos/inspect-file.ts';
import type { Effects } from '../effects.ts';
import { refusing } from '../write-new.ts';
import { type ByContent, bringIn } from './bring-in.ts';
import type { Dumped } from './dumped.ts';
import { freeNames } from './evenings.ts';

export interface HowTaken {
  /** Nothing is written. */
  readonly dry: boolean;
  /** What has been copied and compared is taken out of where it came from. */
  readonly move: boolean;
}

/** A file with the path in the journal that it has now, or had already. */
export interface Taken {
  readonly file: Dumped;
  readonly path: string;
}

export interface TakenIn {
  readonly brought: readonly Taken[];
  /** The journal has the same bytes already. */
  readonly known: readonly Taken[];
}

/** Tells apart what the journal has already, whatever time it tells; with `move` that is taken out of where it came from. */
export async function apart(
  files: readonly Dumped[],
  has: ByContent,
  { dry, move }: HowTaken,
): Promise<{ readonly fresh: readonly Dumped[]; readonly known: readonly Dumped[] }> {
  const fresh: Dumped[] = [];
  const known: Dumped[] = [];
  for (const file of files) {
    const there = has.mayHave(file.bytes) && (await has.find(await digestOf(file.file), file.bytes)) !== null;
    (there ? known : fresh).push(file);
    if (there && move && !dry) refusing(file.file, () => rmSync(file.file));
  }
  return { fresh, known };
}

/**
 * Takes files into one folder of a journal, those that it does not have yet, and says each as it is done.
 *
 * @param journal the journal folder
 * @param folder inside the journal
 * @param has what the journal has by content; what is taken in is added
 * @throws Refusal for the first that cannot be taken in; those before it stay
 */
export async function takeIn(
  files: readonly Dumped[],
  { journal, folder, has }: { readonly journal: string; readonly folder: string; readonly has: ByContent },
  { dry, move }: HowTaken,
  effects: Effects,
): Promise<TakenIn> {
  const brought: Taken[] = [];
  const known: Taken[] = [];
  const there = join(journal, folder);
  // A run that was stopped may have begun in the folder of any evening.
  if (!dry) clearBegun([join(journal, 'sessions')]);
  const names = new Set(existsSync(there) ? readdirSync(there) : []);
  const shown = (path: string): string => relative(effects.cwd, path) || path;
  for (const file of files) {
    const digest = await digestOf(file.file);
    const same = await has.find(digest, file.bytes);
    const [name = file.name] = freeNames([file], names);
    const path = same ?? `${folder}/${name}`;
    if (same === null) {
      if (!dry) await bringIn(file.file, join(journal, path), digest);
      effects.out(`${shown(file.file)} -> ${shown(join(journal, path))}\n`);
      names.add(name);
      has.add(path, file.bytes, digest);
    }
    (same === null ? brought : known).push({ file, path });
    if (move && !dry) refusing(file.file, () => rmSync(file.file));
  }
  return { brought, known };
}
