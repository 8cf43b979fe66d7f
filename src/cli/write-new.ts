import { IsThere, writeNewFile } from '../disk/write-new.ts';
import { reasonOf } from '../load/problems.ts';
import { EXIT, Refusal } from './exit-codes.ts';

/**
 * Writes a file that must not be there yet.
 *
 * @throws Refusal when it is there, or cannot be written; then nothing has changed
 */
export function writeNew(path: string, text: string | Uint8Array): void {
  refusing(path, () => writeNewFile(path, text));
}

/**
 * Does something to the user's disk, and says in one line why it cannot be done.
 *
 * @param path what is written
 * @throws Refusal
 */
export function refusing(path: string, write: () => void): void {
  try {
    write();
  } catch (error) {
    if (error instanceof Refusal) throw error;
    throw new Refusal(
      EXIT.cannotReadOrWrite,
      error instanceof IsThere ? `${error.path} is there already; it was left as it is.` : `${path} cannot be written: ${reasonOf(error)}.`,
    );
  }
}
