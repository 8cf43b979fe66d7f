/** Paths that may come from what a user wrote, kept inside the folder that they belong to. */
import { join, resolve, sep } from 'node:path';

/**
 * @param folder any folder
 * @param path from it, parts joined by `/`
 * @returns the path of the file, certainly below the folder
 * @throws Error for a path that is the folder itself, leads out of it, or holds what no address of ours does: a NUL or a backslash
 */
export function pathWithin(folder: string, path: string): string {
  const file = resolve(join(folder, path));
  if (/[\0\\]/.test(path) || !file.startsWith(`${resolve(folder)}${sep}`)) {
    throw new Error(`${JSON.stringify(path)} would be written outside ${folder}`);
  }
  return file;
}
