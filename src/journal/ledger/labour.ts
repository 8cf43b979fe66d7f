import Fraction from 'fraction.js';
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { IsoDate, Minor, Person, Place, WorkedTime } from '../model.ts';
import { roundHalfAway } from '../values/money.ts';

/** The rate of a person on a day: the latest that is in force by then, or null. */
export function rateOn(person: Person, date: IsoDate): Minor | null {
  let rate: Minor | null = null;
  for (const each of person.rates) if (each.from === null || each.from <= date) rate = each.perHour;
  return rate;
}

/** What minutes cost at a rate an hour, rounded once, half away from zero. */
export function costOfTime(minutes: number, perHour: Minor): Minor {
  return roundHalfAway(new Fraction(perHour).mul(minutes, 60));
}

/** What an hour of time worked is charged at: the rate of its note's day, after midnight too; null when there is none yet. */
export function perHourOf({ perHour }: WorkedTime, date: IsoDate, person: Person | undefined): Minor | null {
  return perHour ?? (person ? rateOn(person, date) : null);
}

/** What time worked is charged at: nothing when it is unpaid, or when the person has no rate yet (A810). */
export function chargeOf(worked: WorkedTime, date: IsoDate, person: Person | undefined, diagnostics: Diagnostic[]): Minor {
  if (worked.unpaid !== null || !person) return 0;
  const rate = perHourOf(worked, date, person);
  if (rate === null) diagnostics.push(noRate(person, date, worked.place));
  return costOfTime(worked.minutes, rate ?? 0);
}

function noRate(person: Person, date: IsoDate, place: Place): Diagnostic {
  const first = person.rates[0]?.from;
  const message = `${person.name} has no rate on ${date}${first ? `; the first is from ${first}` : ''}.`;
  return diagnostic('A810', place, message, { hint: 'Give an earlier rate in journal.yaml, or say `unpaid: WHY`.' });
}
