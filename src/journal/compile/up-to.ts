import type { IsoDate, Journal } from '../model.ts';

/** The journal as its notes had it at the end of a day, and the files of the notes that came after. */
export interface UpTo {
  readonly known: Journal;
  readonly later: ReadonlySet<string>;
}

/**
 * Leaves out the notes after a day; the catalogue stays whole.
 *
 * @param day null leaves nothing out
 */
export function upTo(journal: Journal, day: IsoDate | null): UpTo {
  if (day === null) return { known: journal, later: new Set() };
  const later = journal.sessions.filter(({ date }) => date > day);
  const sessions = journal.sessions.filter(({ date }) => date <= day);
  const statements = journal.statements.filter(({ to }) => to <= day);
  return { known: { ...journal, sessions, statements }, later: new Set(later.map(({ file }) => file)) };
}

/** The day a record stands on: the day asked for, else of the newest note, else of the arrival. */
export function recordDay({ settings, sessions }: Journal, asked: IsoDate | null): IsoDate {
  const dates = [settings.arrived, ...sessions.map(({ date }) => date)].sort();
  return asked ?? (dates.at(-1) as IsoDate);
}
