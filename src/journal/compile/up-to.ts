import type { IsoDate, Journal, Session } from '../model.ts';

/** The journal as its notes had it at the end of a day, and the files of the notes that came after. */
export interface UpTo {
  readonly known: Journal;
  readonly later: ReadonlySet<string>;
}

/**
 * Leaves out the notes after a day, and hours that a note of that day tells of the next; the catalogue stays whole.
 *
 * @param day null leaves nothing out
 */
export function upTo(journal: Journal, day: IsoDate | null): UpTo {
  if (day === null) return { known: journal, later: new Set() };
  const later = journal.sessions.filter(({ date }) => date > day);
  const sessions = journal.sessions.filter(({ date }) => date <= day).map((session) => workedUpTo(session, day));
  const statements = journal.statements.filter(({ to }) => to <= day);
  return { known: { ...journal, sessions, statements }, later: new Set(later.map(({ file }) => file)) };
}

function workedUpTo(session: Session, day: IsoDate): Session {
  if (session.hours.every(({ days }) => days.every(({ date }) => date <= day))) return session;
  const hours = session.hours.map((worked) => {
    const days = worked.days.filter(({ date }) => date <= day);
    return { ...worked, days, minutes: days.reduce((all, { minutes }) => all + minutes, 0) };
  });
  return { ...session, hours };
}

/** The day a record stands on: the day asked for, else of the newest note and its hours after midnight, else of the arrival. */
export function recordDay({ settings, sessions }: Journal, asked: IsoDate | null): IsoDate {
  const worked = (sessions.at(-1)?.hours ?? []).flatMap(({ days }) => days.map(({ date }) => date));
  const dates = [settings.arrived, ...sessions.map(({ date }) => date), ...worked].sort();
  return asked ?? (dates.at(-1) as IsoDate);
}
