import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { WorkedTime } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { formatMinutes } from '../values/money.ts';

const DAY = 24 * 60;

/** One person works no more than 24 hours on one date. */
export function hoursOfADay({ journal }: JournalRecord): Diagnostic[] {
  const days = new Map<string, WorkedTime[]>();
  for (const session of journal.sessions) {
    for (const worked of session.hours) {
      const key = `${session.date} ${worked.by}`;
      const list = days.get(key);
      if (list) list.push(worked);
      else days.set(key, [worked]);
    }
  }
  return [...days].flatMap(([key, list]) => tooLong(key.slice(0, 10), list, journal.people.get(key.slice(11))?.name ?? key.slice(11)));
}

function tooLong(date: string, list: readonly WorkedTime[], name: string): Diagnostic[] {
  const minutes = list.reduce((sum, worked) => sum + worked.minutes, 0);
  const [first] = list;
  const last = list.at(-1);
  if (minutes <= DAY || !first || !last) return [];
  const related = first === last ? [] : [{ place: first.place, message: 'The first of them is here.' }];
  return [diagnostic('A804', last.place, `${name} has ${formatMinutes(minutes)} on ${date}; a day holds 24 h.`, { related })];
}
