import { sentBy } from '../model/sent-by.ts';
import type { FrozenStatement, IsoDate, Journal } from '../model.ts';

/** The journal as its notes had it at the end of a day, and the files of the notes that came after. */
export interface UpTo {
  readonly known: Journal;
  readonly later: ReadonlySet<string>;
  /** Statements that were closed after that day. */
  readonly closedLater: readonly FrozenStatement[];
}

/**
 * Leaves out the notes after a day; the catalogue stays whole.
 *
 * @param day null leaves nothing out
 */
export function upTo(journal: Journal, day: IsoDate | null): UpTo {
  if (day === null) return { known: journal, later: new Set(), closedLater: [] };
  const later = journal.sessions.filter(({ date }) => date > day);
  const sessions = journal.sessions.filter(({ date }) => date <= day);
  const statements = sentBy(journal, day);
  const closedLater = journal.statements.filter((one) => !statements.includes(one));
  return { known: { ...journal, sessions, statements }, later: new Set(later.map(({ file }) => file)), closedLater };
}

/** The day a record stands on: the day asked for, else of the newest note, else of the arrival. */
export function recordDay({ settings, sessions }: Journal, asked: IsoDate | null): IsoDate {
  const dates = [settings.arrived, ...sessions.map(({ date }) => date)].sort();
  return asked ?? (dates.at(-1) as IsoDate);
}
