import { type Diagnostic, diagnostic, startOf } from '../diagnostics/diagnostic.ts';
import { didYouMean } from '../diagnostics/nearest.ts';
import type { JournalRecord } from '../record.ts';
import type { CheckedAgainst } from './check.ts';

/** A note corrects a session that exists. */
export function correctedSessions({ journal }: JournalRecord, { whole }: CheckedAgainst): Diagnostic[] {
  const ids = new Set(whole.journal.sessions.map((session) => session.id));
  return journal.sessions.flatMap((session) => {
    if (session.corrects === null || ids.has(session.corrects)) return [];
    const hint = didYouMean(session.corrects, ids);
    return [diagnostic('A409', session.correctsPlace ?? startOf(session.file), `There is no session \`${session.corrects}\`.`, { hint })];
  });
}
