/** What can be made again, kept with a digest of itself: what was cut short, changed or put in the place of another is no longer what was written. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { writeWhole } from './write-whole.ts';

/**
 * @param file that `writeKept` wrote
 * @param what the same words that it was written with
 * @returns the value; undefined when the file is not there, cannot be read, or is not as it was written
 */
export function readKept(file: string, what: string): unknown {
  try {
    const text = readFileSync(file, 'utf8');
    const json = text.slice(DIGEST_LENGTH + 1);
    return text.startsWith(`${digestOf(what, json)}\n`) ? JSON.parse(json) : undefined;
  } catch {
    return undefined;
  }
}

/**
 * @param what says what is kept and in which edition: another edition is not read, nor is a file that was kept as something else
 * @throws the file system's error
 */
export function writeKept(file: string, what: string, value: unknown): void {
  const json = JSON.stringify(value);
  writeWhole(file, `${digestOf(what, json)}\n${json}`);
}

const DIGEST_LENGTH = 64;

function digestOf(what: string, json: string): string {
  return createHash('sha256').update(`${what}\0`).update(json).digest('hex');
}
