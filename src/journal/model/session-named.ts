import type { Journal, Session } from '../model.ts';

interface Index {
  readonly byId: ReadonlyMap<string, Session>;
  /** Null where a day has several. */
  readonly byDate: ReadonlyMap<string, Session | null>;
}

const indexes = new WeakMap<Journal, Index>();

function indexOf(journal: Journal): Index {
  const known = indexes.get(journal);
  if (known) return known;
  const byDate = new Map<string, Session | null>();
  for (const session of journal.sessions) byDate.set(session.date, byDate.has(session.date) ? null : session);
  const index = { byId: new Map(journal.sessions.map((session) => [session.id, session])), byDate };
  indexes.set(journal, index);
  return index;
}

/** The session of an id, or of a date that only one session has; null when there is none. */
export function sessionNamed(journal: Journal, name: string): Session | null {
  const { byId, byDate } = indexOf(journal);
  return byId.get(name) ?? byDate.get(name) ?? null;
}
