import Fraction from 'fraction.js';
import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { IsoDate, Journal, Minor, Person, Session, WorkedTime } from '../model.ts';
import type { Entry } from '../record.ts';
import { roundHalfAway } from '../values/decimal.ts';
import { entryOf } from './entry.ts';

/** Hours at the rate in force on the day, rounded once an entry; unpaid hours count their time and cost nothing. */
export function labourEntries(session: Session, journal: Journal): { entries: Entry[]; diagnostics: Diagnostic[] } {
  const diagnostics: Diagnostic[] = [];
  const entries = session.hours.map((worked, i) => {
    const person = journal.people.get(worked.by);
    const rate = person ? rateOn(person, session.date) : 0;
    if (rate === null) diagnostics.push(noRate(worked, person, session.date));
    const pay = worked.unpaid === null ? payFor(worked.minutes, rate ?? 0) : 0;
    return entryOf(`${session.id}#hours-${i + 1}`, session, worked.on, journal, {
      kind: 'labour',
      what: worked.text,
      person: worked.by,
      minutes: worked.minutes,
      net: pay,
      tax: 0,
      gross: pay,
      paid: false,
      cost: true,
      place: worked.place,
    });
  });
  return { entries, diagnostics };
}

/** What minutes come to at a rate per hour. */
export function payFor(minutes: number, perHour: Minor): Minor {
  return roundHalfAway(new Fraction(minutes).mul(perHour).div(60));
}

/** The rate in force on a date; null before the first that has a date. */
export function rateOn(person: Person, date: IsoDate): Minor | null {
  return person.rates.findLast((rate) => rate.from === null || rate.from <= date)?.perHour ?? null;
}

function noRate(worked: WorkedTime, person: Person | undefined, date: IsoDate): Diagnostic {
  const first = person?.rates[0]?.from ?? '';
  return diagnostic('A810', worked.place, `${person?.name ?? worked.by} has no rate on ${date}; the first is from ${first}.`, {
    hint: 'Begin the list of rates earlier, in journal.yaml.',
  });
}
