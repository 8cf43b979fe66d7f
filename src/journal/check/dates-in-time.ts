import { beforeArrival } from '../diagnostics/before-arrival.ts';
import { type Diagnostic, diagnostic, startOf } from '../diagnostics/diagnostic.ts';
import type { Session } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import type { CheckedAgainst } from './check.ts';

/** What is bought, sold, received and valued before the vehicle is there, with its papers and words, touches nothing of it. */
function isOfMoneyAlone(session: Session): boolean {
  const { hours, parts, decisions, methods, measured, used, counted, bags, emptied, reached, film } = session;
  const atWork: readonly (readonly unknown[])[] = [hours, parts, decisions, methods, measured, used, counted, bags, emptied, reached, film];
  const ofMoney: readonly (readonly unknown[])[] = [session.bills, session.sold, session.received, session.valued];
  return ofMoney.some((list) => list.length > 0) && atWork.every((list) => list.length === 0);
}

/** The vehicle has arrived, and a session lies between that day and today; only money may have gone out before. */
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
    if (session.date < arrived && !isOfMoneyAlone(session)) {
      const hint = 'Check the date here, and `arrived` in journal.yaml. A note of that day holds only what was bought, received or valued.';
      return [beforeArrival(place, session.date, arrived, hint)];
    }
    return [];
  });
}
