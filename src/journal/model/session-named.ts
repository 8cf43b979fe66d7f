import type { Journal, Session } from '../model.ts';
import { once } from '../values/once.ts';

interface Index {
  readonly byId: ReadonlyMap<string, Session>;
  /** Null where a day has several. */
  readonly byDate: ReadonlyMap<string, Session | null>;
}

const indexOf = once(({ sessions }: Journal): Index => {
  const byDate = new Map<string, Session | null>();
  for (const session of sessions) byDate.set(session.date, byDate.has(session.date) ? null : session);
  return { byId: new Map(sessions.map((session) => [session.id, session])), byDate };
});

/** The session of an id, or of a date that only one session has; null when there is none. */
export function sessionNamed(journal: Journal, name: string): Session | null {
  const { byId, byDate } = indexOf(journal);
  return byId.get(name) ?? byDate.get(name) ?? null;
}
