import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import { reasonOf } from '../load/problems.ts';
import { EXIT, Refusal } from './exit-codes.ts';

/**
 * Writes a file that must not be there yet.
 *
 * @throws Refusal when it is there, or cannot be written; then nothing has changed
 */
export function writeNew(path: string, text: string | Uint8Array): void {
  try {
    mkdirSync(dirname(path), { recursive: true });
    writeFileSync(path, text, { flag: 'wx' });
  } catch (error) {
    const there = (error as { code?: string }).code === 'EEXIST';
    throw new Refusal(
      EXIT.cannotReadOrWrite,
      there ? `${path} is there already; it was left as it is.` : `${path} cannot be written: ${reasonOf(error)}.`,
    );
  }
}
