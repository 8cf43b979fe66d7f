import { type Diagnostic, diagnostic, startOf } from '../diagnostics/diagnostic.ts';
import type { JournalRecord } from '../record.ts';
import type { CheckedAgainst } from './check.ts';

/** A note that is named for a date carries that date. One that cannot be is told by itself. */
export function folderDates({ journal }: JournalRecord, { today }: CheckedAgainst): Diagnostic[] {
  return journal.sessions.flatMap((session) => {
    const named = /^\d{4}-\d{2}-\d{2}/.exec(session.id)?.[0];
    if (named === undefined || named === session.date) return [];
    if (session.date > today || session.date < journal.settings.arrived) return [];
    const message = `The note says ${session.date}, and its name says ${named}.`;
    return [diagnostic('A317', session.datePlace ?? startOf(session.file), message, { hint: 'Change one of the two.' })];
  });
}
