/** A thread: every session that touched its parts, in order. */
import type { Session, SessionId, Thread } from '../../../journal/model.ts';
import { eventsOfPart } from '../../../journal/timelines/events.ts';
import { once } from '../../../journal/values/once.ts';
import type { SiteRecord } from '../../record.ts';

/** Sessions in which something was done, decided, measured, tried, shown or said of a part of the thread, oldest first. */
export function sessionsOfThread(record: SiteRecord, { parts }: Thread): readonly Session[] {
  const touched = new Set(parts.flatMap((part) => eventsOfPart(record, part).map(({ session }) => session)));
  const named = new Set(parts);
  const speaks = ({ links }: Session) => links.some(({ scheme, id }) => scheme === 'part' && named.has(id));
  return record.journal.sessions.filter((session) => touched.has(session.id) || speaks(session));
}

/** Where a session stands in a thread that it belongs to. */
export interface InThread {
  readonly thread: Thread;
  readonly before: Session | null;
  readonly after: Session | null;
}

/** The threads that a session belongs to, in declared order. */
export function threadsOfSession(record: SiteRecord, id: SessionId): readonly InThread[] {
  return threadsBySession(record).get(id) ?? [];
}

/** Every session asks for its own: each thread is gone through once for all of them. */
const threadsBySession = once((record: SiteRecord): ReadonlyMap<SessionId, readonly InThread[]> => {
  const all = record.journal.threads.flatMap((thread) => {
    const sessions = sessionsOfThread(record, thread);
    return sessions.map(({ id }, n) => ({ id, thread, before: sessions[n - 1] ?? null, after: sessions[n + 1] ?? null }));
  });
  return Map.groupBy(all, ({ id }) => id);
});

/**
 * Rendered prose as it stands on the page of a thread, among that of other sessions: its anchors, and what leads to
 * them, carry the session's id, and what leads to a page beside its own names the folder.
 *
 * @param html of `noteHtml`
 */
export function amongOthers(html: string, session: SessionId): string {
  return html
    .replaceAll(/ (id|aria-describedby|aria-labelledby)="([^"]+)"/g, (_, name: string, ids: string) => {
      return ` ${name}="${ids
        .split(' ')
        .map((id) => `${session}-${id}`)
        .join(' ')}"`;
    })
    .replaceAll(/ href="#([^"]+)"/g, ` href="#${session}-$1"`)
    .replaceAll(/ href="([^":/#]+\.html[^"]*)"/g, ' href="../sessions/$1"');
}
