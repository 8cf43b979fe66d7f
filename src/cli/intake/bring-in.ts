/** Takes files into the journal: copied beside, compared, and then there under their names, never over anything. */
import { chmodSync, closeSync, constants, copyFileSync, fsyncSync, openSync, rmSync, statSync, utimesSync } from 'node:fs';
import { dirname } from 'node:path';
import { makeFolder } from '../../disk/folders.ts';
import { appear, hiddenBeside, IsThere } from '../../disk/write-new.ts';
import { removeLeftOvers } from '../../disk/write-whole.ts';
import { reasonOf } from '../../load/problems.ts';
import { digestOf } from '../../photos/inspect-file.ts';
import { EXIT, Refusal } from '../exit-codes.ts';

/**
 * @param digest what the file was when it was looked at
 * @throws Refusal when it cannot be copied, the copy is not the same, or something is there; then nothing has changed
 */
export async function bringIn(from: string, to: string, digest: string): Promise<void> {
  const unfinished = hiddenBeside(to);
  try {
    makeFolder(dirname(to));
    copyFileSync(from, unfinished, constants.COPYFILE_EXCL | constants.COPYFILE_FICLONE);
    chmodSync(unfinished, 0o644);
    const { atime, mtime } = statSync(from);
    utimesSync(unfinished, atime, mtime);
    reachDisk(unfinished);
    if ((await digestOf(unfinished)) !== digest)
      throw new Refusal(EXIT.cannotReadOrWrite, `the copy of ${from} is not the same; it was taken away.`);
    appear(unfinished, to);
    removeLeftOvers(dirname(to));
  } catch (error) {
    rmSync(unfinished, { force: true });
    if (error instanceof Refusal) throw error;
    const reason = error instanceof IsThere ? `${to} is there already` : reasonOf(error);
    throw new Refusal(EXIT.cannotReadOrWrite, `${from} cannot be copied to ${to}: ${reason}.`);
  }
}

function reachDisk(file: string): void {
  const open = openSync(file, 'r+');
  try {
    fsyncSync(open);
  } finally {
    closeSync(open);
  }
}

/** A file of the journal, by its path and size. */
interface Sized {
  readonly path: string;
  readonly size: number;
}

/** What the journal has already, by content: only what has the size of another is read. */
export class ByContent {
  readonly #bySize: Map<number, Sized[]>;
  readonly #digests = new Map<string, string>();
  readonly #root: (path: string) => string;

  /** @param root where a path of the journal lies */
  constructor(assets: readonly Sized[], root: (path: string) => string) {
    this.#bySize = Map.groupBy(assets, ({ size }) => size);
    this.#root = root;
  }

  /** Whether any file is as long, without which none has the same bytes. */
  mayHave(bytes: number): boolean {
    return this.#bySize.has(bytes);
  }

  /** The path of a file with the same bytes; null where there is none. */
  async find(digest: string, bytes: number): Promise<string | null> {
    for (const { path } of this.#bySize.get(bytes) ?? []) if ((await this.#digest(path)) === digest) return path;
    return null;
  }

  async #digest(path: string): Promise<string> {
    const known = this.#digests.get(path) ?? (await digestOf(this.#root(path)));
    this.#digests.set(path, known);
    return known;
  }

  /** What has just been brought in, or will be. */
  add(path: string, bytes: number, digest: string): void {
    this.#digests.set(path, digest);
    this.#bySize.set(bytes, [...(this.#bySize.get(bytes) ?? []), { path, size: bytes }]);
  }
}
