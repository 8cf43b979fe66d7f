/** What a view of the record as it stood on a past day follows from: all that is declared, and the notes up to that day. */
import type { IsoDate, Journal } from '../../journal/model.ts';
import type { JournalRecord } from '../../journal/record.ts';
import { once } from '../../journal/values/once.ts';
import { digestOf } from './digest.ts';

/** A digest of it, for a day. Later notes do not change it. */
export function recordUpTo({ journal }: JournalRecord, date: IsoDate): string {
  const days = digestsByDay(journal);
  return days.findLast((one) => one.date <= date)?.digest ?? declared(journal);
}

const declared = once(({ sessions: _, ...rest }: Journal) => digestOf(rest));

/** A digest for each day that has notes, oldest first. */
const digestsByDay = once((journal: Journal): readonly { readonly date: IsoDate; readonly digest: string }[] => {
  let digest = declared(journal);
  return [...Map.groupBy(journal.sessions, ({ date }) => date)].map(([date, sessions]) => {
    digest = digestOf([digest, sessions.map(digestOf)]);
    return { date, digest };
  });
});
