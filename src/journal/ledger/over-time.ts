import type { IsoDate, Minor } from '../model.ts';
import { addDays, mondayOf, weekOf } from '../values/date.ts';
import { type Books, entriesAt, type Sum, sumBy, sumOf, viewAt } from './sums.ts';

export interface Week {
  /** ISO 8601, `2031-W11`. */
  readonly week: string;
  readonly monday: IsoDate;
  readonly sum: Sum;
}

/** Labour by ISO week, from the first week worked to the last, weeks without work included. */
export function hoursByWeek(books: Pick<Books, 'ledger'>, at: IsoDate | null): Week[] {
  const worked = viewAt(books, 'cost', at).filter((entry) => entry.kind === 'labour');
  const mondays = new Map<IsoDate, IsoDate>();
  const mondayOnce = (date: IsoDate): IsoDate => {
    const monday = mondays.get(date) ?? mondayOf(date);
    mondays.set(date, monday);
    return monday;
  };
  const sums = sumBy(worked, (entry) => mondayOnce(entry.date));
  const [first, last] = [worked[0], worked.at(-1)];
  if (!first || !last) return [];
  const weeks: Week[] = [];
  for (let monday = mondayOnce(first.date); monday <= last.date; monday = addDays(monday, 7)) {
    weeks.push({ week: weekOf(monday), monday, sum: sums.get(monday) ?? sumOf([]) });
  }
  return weeks;
}

/** Running totals at the end of a day on which something was booked. Gross. */
export interface Running {
  readonly date: IsoDate;
  readonly paid: Minor;
  readonly cost: Minor;
  readonly minutes: number;
}

/** What had been paid, and what the job had cost, day by day. */
export function cumulativeSpend(books: Pick<Books, 'ledger'>, at: IsoDate | null): Running[] {
  const days: Running[] = [];
  let [paid, cost, minutes] = [0, 0, 0];
  for (const entry of entriesAt(books, at)) {
    if (entry.paid) paid += entry.gross;
    if (entry.cost) cost += entry.gross;
    minutes += entry.minutes ?? 0;
    if (days.at(-1)?.date === entry.date) days.pop();
    days.push({ date: entry.date, paid, cost, minutes });
  }
  return days;
}
