import type { Effects } from './effects.ts';
import { EXIT, type Exit } from './exit-codes.ts';

/** A full disk, a missing permission, and a fault of our own, each in one line. */
export function ownFault(error: unknown, effects: Pick<Effects, 'err' | 'env'>): Exit {
  const refused = refusalIn(error);
  if (refused !== null && !effects.env.ASFOUND_DEBUG) {
    effects.err(`asfound: the system refused: ${refused}\n`);
    return EXIT.cannotReadOrWrite;
  }
  const message = error instanceof Error ? error.message : String(error);
  effects.err(`asfound: a fault of its own: ${message.split('\n')[0]}\n`);
  if (effects.env.ASFOUND_DEBUG) effects.err(`${error instanceof Error ? error.stack : ''}\n`);
  else effects.err('ASFOUND_DEBUG=1 shows more.\n');
  return EXIT.ownFault;
}

/** What the disk, not a mistake of ours, is to blame for: as Node says it, and as libraries that are no JavaScript do. */
const OF_THE_DISK = /\b(?:ENOSPC|EDQUOT|EROFS|EACCES|EPERM|EIO|EMFILE|ENFILE|EFBIG)\b:[^\n]*|[^\n]* \(os error \d+\)/;

/** What the system said, in one line, be it wrapped in the error of a library; null when it said nothing. */
function refusalIn(error: unknown): string | null {
  if (!(error instanceof Error)) return null;
  if ('syscall' in error) return error.message.split('\n')[0] ?? '';
  const inside = [error.cause, ...('errors' in error && Array.isArray(error.errors) ? error.errors : [])];
  const found = inside.map(refusalIn).find((each) => each !== null);
  return found ?? OF_THE_DISK.exec(error.message)?.[0].trim() ?? null;
}
