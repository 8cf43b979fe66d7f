/** A thread: every session that touched its parts, in order. */
import type { Decision, Picture, Session, SessionId, Thread } from '../../../journal/model.ts';
import { eventsOfPart } from '../../../journal/timelines/events.ts';
import { once } from '../../../journal/values/once.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import type { SiteRecord } from '../../record.ts';
import type { Sheet } from '../page/sheet.ts';

/** Sessions in which something was done, decided, measured, tried, shown or said of a part of the thread, oldest first. */
export function sessionsOfThread(record: SiteRecord, { parts }: Thread): readonly Session[] {
  const touched = new Set(parts.flatMap((part) => eventsOfPart(record, part).map(({ session }) => session)));
  const named = new Set(parts);
  const speaks = ({ links }: Session) => links.some(({ scheme, id }) => scheme === 'part' && named.has(id));
  return record.journal.sessions.filter((session) => touched.has(session.id) || speaks(session));
}

/** All that the page of a thread shows, but for names. */
export interface ThreadPage {
  readonly thread: Thread;
  /** Oldest first, each with its prose, pictures of the thread that stand outside it, and what was decided on its parts. */
  readonly told: readonly {
    readonly session: Session;
    readonly html: string;
    readonly pictures: readonly Picture[];
    readonly decisions: readonly Decision[];
  }[];
  readonly others: readonly Pick<Thread, 'id' | 'title'>[];
}

const PAGE = shown('thread', async ({ record }, id: string): Promise<ThreadPage> => {
  const { threads } = record.journal;
  const thread = threads.find((one) => one.id === id);
  if (thread === undefined) throw new RangeError(`there is no thread ${id}`);
  const parts = new Set(thread.parts);
  const told = sessionsOfThread(record, thread).map(async (session) => ({
    session,
    html: amongOthers(await record.noteHtml(session.id), session.id),
    pictures: session.pictures.filter(({ inProse, shows }) => !inProse && shows.some((part) => parts.has(part))),
    decisions: session.decisions.filter(({ part, position }) => parts.has(part) || parts.has(position)),
  }));
  const others = threads.filter((one) => one !== thread).map(({ id: other, title }) => ({ id: other, title }));
  return { thread, told: await Promise.all(told), others };
});

export const THREAD_QUESTIONS: readonly AnyQuestion[] = [PAGE];

/** @throws RangeError where there is no such thread */
export const threadPage = (sheet: Sheet, id: string): Promise<ThreadPage> => sheet.ask(PAGE, id);

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
