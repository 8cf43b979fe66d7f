import { type Diagnostic, diagnostic, startOf } from '../diagnostics/diagnostic.ts';
import type { JournalRecord } from '../record.ts';
import type { CheckedAgainst } from './check.ts';

/** The vehicle has arrived, and a session lies between the day the vehicle arrived and today. */
export function datesInTime({ journal }: JournalRecord, { today }: CheckedAgainst): Diagnostic[] {
  const { arrived, arrivedPlace = startOf('journal.yaml') } = journal.settings;
  if (arrived > today) {
    const message = `The vehicle arrives on ${arrived}, which is in the future: today is ${today}.`;
    return [diagnostic('A801', arrivedPlace, message, { hint: 'Check the year first.' })];
  }
  return journal.sessions.flatMap((session) => {
    const place = session.datePlace ?? startOf(session.file);
    if (session.date > today) {
      const message = `${session.date} is in the future: today is ${today}.`;
      return [diagnostic('A801', place, message, { hint: 'Check the year first.' })];
    }
    if (session.date < arrived) {
      const message = `${session.date} is before the vehicle arrived, on ${arrived}.`;
      return [diagnostic('A802', place, message, { hint: 'Check the date here, and `arrived` in journal.yaml.' })];
    }
    return [];
  });
}
