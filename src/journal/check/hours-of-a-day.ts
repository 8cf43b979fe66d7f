import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { WorkedTime } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { formatMinutes } from '../values/money.ts';
import { dayLength } from '../values/time.ts';

/** What one person worked on one day, and where it is told. */
interface OnADay {
  readonly minutes: number;
  readonly worked: WorkedTime;
}

/** One person works no more on one day than it has hours: 24, or one less or more where the clocks change. */
export function hoursOfADay({ journal }: JournalRecord): Diagnostic[] {
  const days = new Map<string, OnADay[]>();
  for (const session of journal.sessions) {
    for (const worked of session.hours) {
      for (const { date, minutes } of worked.days) {
        const key = `${date} ${worked.by}`;
        const list = days.get(key);
        if (list) list.push({ minutes, worked });
        else days.set(key, [{ minutes, worked }]);
      }
    }
  }
  return [...days].flatMap(([key, list]) => {
    const [date, by] = [key.slice(0, 10), key.slice(11)];
    return tooLong(date, list, journal.people.get(by)?.name ?? by, journal.settings.timeZone);
  });
}

function tooLong(date: string, list: readonly OnADay[], name: string, timeZone: string): Diagnostic[] {
  const minutes = list.reduce((sum, one) => sum + one.minutes, 0);
  // No day is shorter than 23 hours, and only long ones are worth asking the clocks about.
  if (minutes <= 23 * 60) return [];
  const holds = dayLength(date, timeZone);
  const [first] = list;
  const last = list.at(-1);
  if (minutes <= holds || !first || !last) return [];
  const related = first === last ? [] : [{ place: first.worked.place, message: 'The first of them is here.' }];
  const says = `${name} has ${formatMinutes(minutes)} on ${date}; that day holds ${formatMinutes(holds)}.`;
  const hint = 'Compare the entries of that day: one may be too long, twice there, or of another day.';
  return [diagnostic('A804', last.worked.place, says, { related, hint })];
}
