import type { IsoDate, MilestoneId } from '../model.ts';
import { lastDayOf, monthOf, monthsFrom } from '../values/date.ts';
import { compareText } from '../values/text-order.ts';
import type { RegisterSource } from './source.ts';

/** A day on which the registers are shown as they stood: a month's end, or the day a milestone was reached. */
export interface ViewDate {
  readonly date: IsoDate;
  readonly monthEnd: boolean;
  /** Milestones reached on that day, in declared order. */
  readonly milestones: readonly { readonly id: MilestoneId; readonly name: string }[];
}

/**
 * The ends of the months in which something happened, up to the day before the record's, and every milestone's day; oldest
 * first, each day once. A month without a note or an arrival ended as the one before.
 */
export function viewDates(record: RegisterSource): readonly ViewDate[] {
  const { settings, milestones } = record.journal;
  const days = new Map<IsoDate, { monthEnd: boolean; milestones: { id: MilestoneId; name: string }[] }>();
  const eventful = eventfulMonths(record);
  for (const month of monthsFrom(settings.arrived, record.day)) {
    const end = lastDayOf(month);
    if (end < record.day && eventful.has(month)) days.set(end, { monthEnd: true, milestones: [] });
  }
  for (const { id, name } of milestones) {
    const reached = record.history.reached.get(id);
    if (!reached) continue;
    const day = days.get(reached.date) ?? { monthEnd: false, milestones: [] };
    day.milestones.push({ id, name });
    days.set(reached.date, day);
  }
  return [...days].map(([date, day]) => ({ date, ...day })).sort((a, b) => compareText(a.date, b.date));
}

/** The months in which the vehicle or a part of the catalogue arrived, or a note was written. */
function eventfulMonths({ journal }: RegisterSource): ReadonlySet<string> {
  const arrivals = [...journal.parts.values()].flatMap(({ acquired }) => acquired ?? []);
  return new Set([journal.settings.arrived, ...arrivals, ...journal.sessions.map(({ date }) => date)].map(monthOf));
}
