/** Files and folders of the user's that are not there yet: they appear as a whole, and nothing is ever written over. */
import { chmodSync, closeSync, fsyncSync, linkSync, lstatSync, openSync, renameSync, rmSync, writeSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { makeFolder, removeEmpty } from './folders.ts';
import { removeLeftOvers, unfinishedBeside } from './write-whole.ts';

/** What should be new is there already. */
export class IsThere extends Error {
  readonly path: string;
  constructor(path: string) {
    super(`${path} is there already`);
    this.path = path;
  }
}

/**
 * Takes away what stopped processes had begun beside a file that is to be written.
 *
 * @throws IsThere
 */
export function makeWay(path: string): void {
  if (lstatSync(dirname(path), { throwIfNoEntry: false })?.isDirectory()) removeLeftOvers(dirname(path));
  if (lstatSync(path, { throwIfNoEntry: false })) throw new IsThere(path);
}

/**
 * @throws IsThere; the file system's error; and then nothing has changed
 */
export function writeNewFile(path: string, bytes: string | Uint8Array): void {
  makeWay(path);
  const made = makeFolder(dirname(path));
  const unfinished = hiddenBeside(path);
  try {
    writeThrough(unfinished, bytes);
    appear(unfinished, path);
  } catch (error) {
    rmSync(unfinished, { force: true });
    removeEmpty(made);
    throw error;
  }
}

/**
 * Puts new bytes in the place of a file of the user's, as a whole: it keeps its mode, and whatever goes wrong leaves it as it was.
 *
 * @param path of a file that is there, and no link
 * @throws the file system's error
 */
export function writeOver(path: string, bytes: string | Uint8Array): void {
  const unfinished = hiddenBeside(path);
  try {
    writeThrough(unfinished, bytes);
    chmodSync(unfinished, lstatSync(path).mode & 0o7777);
    renameSync(unfinished, path);
    removeLeftOvers(dirname(path));
  } catch (error) {
    rmSync(unfinished, { force: true });
    throw error;
  }
}

/**
 * Makes a folder that is not there yet, with all that is in it.
 *
 * @param files by their paths in it
 * @throws IsThere; the file system's error; and then nothing has changed
 */
export function writeNewFolder(folder: string, files: ReadonlyMap<string, string | Uint8Array>): void {
  const made = makeFolder(dirname(folder));
  const unfinished = hiddenBeside(folder);
  try {
    fill(unfinished, files);
    // A folder that holds something cannot be renamed onto; an empty one is as good as none.
    if (lstatSync(folder, { throwIfNoEntry: false })?.isDirectory() === false) throw new IsThere(folder);
    renameOnto(unfinished, folder);
    removeLeftOvers(dirname(folder));
  } catch (error) {
    rmSync(unfinished, { recursive: true, force: true });
    removeEmpty(made);
    throw error;
  }
}

/** Writes files into a folder of our own; each has reached the disk when it returns. */
export function fill(folder: string, files: ReadonlyMap<string, string | Uint8Array>): void {
  makeFolder(folder);
  for (const [path, text] of files) {
    makeFolder(dirname(join(folder, path)));
    writeThrough(join(folder, path), text);
  }
}

/** A name that a journal is not read from. */
export function hiddenBeside(path: string): string {
  return join(dirname(path), `.${basename(unfinishedBeside(path))}`);
}

/** Writes a file that is not there yet; it has reached the disk when this returns. */
export function writeThrough(file: string, bytes: string | Uint8Array): void {
  const open = openSync(file, 'wx');
  try {
    const all = typeof bytes === 'string' ? Buffer.from(bytes) : bytes;
    for (let done = 0; done < all.length; ) done += writeSync(open, all, done);
    fsyncSync(open);
  } finally {
    closeSync(open);
  }
}

/**
 * Gives a finished file its name. A second name fails where there is something; not every disk has such.
 *
 * @throws IsThere; the file system's error
 */
export function appear(unfinished: string, path: string): void {
  try {
    linkSync(unfinished, path);
    rmSync(unfinished);
  } catch (error) {
    if (lstatSync(path, { throwIfNoEntry: false })) throw new IsThere(path);
    if (['ENOSPC', 'EDQUOT', 'EACCES', 'EROFS', 'ENOENT', 'EIO'].includes((error as { code?: string }).code ?? '')) throw error;
    renameSync(unfinished, path);
  }
}

function renameOnto(unfinished: string, folder: string): void {
  try {
    renameSync(unfinished, folder);
  } catch (error) {
    if (['ENOTEMPTY', 'EEXIST', 'EPERM'].includes((error as { code?: string }).code ?? '') && lstatSync(folder, { throwIfNoEntry: false }))
      throw new IsThere(folder);
    throw error;
  }
}
