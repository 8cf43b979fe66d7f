import { type Diagnostic, diagnostic, startOf, unknownName } from '../diagnostics/diagnostic.ts';
import { sessionNamed } from '../model/session-named.ts';
import { inSessionOrder } from '../model/session-order.ts';
import type { Place, Session } from '../model.ts';
import type { JournalRecord } from '../record.ts';

/** A note corrects a session that exists, and that was before it. */
export function correctedSessions({ journal }: Pick<JournalRecord, 'journal'>): Diagnostic[] {
  return journal.sessions.flatMap((session) => {
    if (session.corrects === null) return [];
    const place = session.correctsPlace ?? startOf(session.file);
    const corrected = sessionNamed(journal, session.corrects);
    if (corrected !== null) return inSessionOrder(corrected, session) < 0 ? [] : [notBefore(session, corrected, place)];
    const known = journal.sessions.map(({ id }) => id);
    return [diagnostic('A409', place, `There is no session \`${session.corrects}\`.`, unknownName('session', session.corrects, known))];
  });
}

function notBefore(session: Session, corrected: Session, place: Place): Diagnostic {
  if (corrected === session) {
    const hint = 'Name the earlier session, or take `corrects` out: a note is put right by editing it.';
    return diagnostic('A412', place, 'This session says that it corrects itself.', { hint });
  }
  const message = `This session cannot correct \`${corrected.id}\`, which comes after it.`;
  const related = [{ place: startOf(corrected.file), message: `\`${corrected.id}\` is this note.` }];
  return diagnostic('A412', place, message, { hint: `Say \`corrects: ${session.id}\` in that note, and take it out here.`, related });
}
