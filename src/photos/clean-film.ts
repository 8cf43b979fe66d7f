/**
 * Blanks what a camera wrote about itself, its place and its time into a film of the MP4 family. What is blanked
 * becomes free space of the same length, so that no picture of the film moves within the file.
 */
import { closeSync, ftruncateSync, openSync, writeSync } from 'node:fs';
import { filmPlan } from './film-plan.ts';

/**
 * Changes a file in place; one that is not understood is left as it is.
 *
 * @param file a copy, never the restorer's own
 * @returns whether it was understood
 */
export function cleanFilm(file: string): boolean {
  const open = openSync(file, 'r+');
  try {
    const { plan } = filmPlan(open);
    if (plan === null) return false;
    ftruncateSync(open, plan.length);
    for (const [from, length] of plan.blank) zero(open, from, length);
    for (const { at, head, length } of plan.free) {
      writeSync(open, 'free', at + 4, 'latin1');
      zero(open, at + head, length - head);
    }
    return true;
  } finally {
    closeSync(open);
  }
}

function zero(open: number, from: number, length: number): void {
  const zeros = Buffer.alloc(Math.min(length, 1 << 20));
  for (let done = 0; done < length; done += zeros.length) {
    writeSync(open, zeros, 0, Math.min(zeros.length, length - done), from + done);
  }
}
