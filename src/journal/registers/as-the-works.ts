import type { JournalRecord } from '../record.ts';
import type { RegisterRow } from './register.ts';

/** Whether a place holds all that the works put there: originals, each at its own place, and nothing else. */
export function isAsTheWorks({ journal }: Pick<JournalRecord, 'journal'>, { position, fitted, empty }: RegisterRow): boolean {
  return empty === 0 && fitted.every(({ part, origin }) => origin === 'original' && journal.parts.get(part)?.position === position);
}
