/** How much was worked of late, and how long what is ahead would take at that: a pace with its basis, never a date. */
import { viewAt } from '../ledger/sums.ts';
import type { IsoDate } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { addDays, daysBetween, mondayOf } from '../values/date.ts';
import { type ItemRow, openItemsAt, takesHours } from './open-items.ts';
import { type At, dateOf } from './source.ts';

/** The weeks that a pace is taken from: a quarter of a year, up to the record's day. */
const WEEKS = 13;
/** Fewer since the first hours tell of no pace, */
const LEAST = 8;
/** nor do fewer with hours in them. */
const LEAST_WORKED = 4;

export interface Pace {
  /** The first of the days that it is taken from; the last is that of the record. */
  readonly from: IsoDate;
  readonly weeks: number;
  /** Worked in them, by all together. */
  readonly minutes: number;
  /** What is open and has hours, in minutes together; and how many tasks, questions and temporary measures say none. */
  readonly ahead: number;
  readonly unsaid: number;
  /** ahead ÷ (minutes ÷ weeks), rounded up; null where too little was worked to go by. */
  readonly weeksAhead: number | null;
  /** The day on which enough weeks will have passed; null where they have. */
  readonly enoughFrom: IsoDate | null;
}

/** Null where nothing that is open has hours, and where a copy leaves hours out. */
export function paceOf(record: JournalRecord, at: At): Pace | null {
  const day = dateOf(record, at);
  const items = openItemsAt(record, at).filter(takesHours);
  const ahead = items.reduce((sum, { hours }: ItemRow) => sum + (hours ?? 0), 0);
  if (ahead === 0 || record.copy.leavesOut.includes('hours')) return null;
  const worked = viewAt(record, 'cost', day).filter(({ kind }) => kind === 'labour');
  const first = worked[0]?.date ?? day;
  const weeks = Math.min(WEEKS, Math.floor((daysBetween(first, day) + 1) / 7));
  const from = addDays(day, 1 - weeks * 7);
  const late = worked.filter(({ date }) => date >= from);
  const minutes = late.reduce((sum, entry) => sum + (entry.minutes ?? 0), 0);
  const enough = weeks >= LEAST && minutes > 0 && new Set(late.map(({ date }) => mondayOf(date))).size >= LEAST_WORKED;
  return {
    from,
    weeks,
    minutes,
    ahead,
    unsaid: items.filter(({ hours }) => hours === null).length,
    weeksAhead: enough ? Math.ceil((ahead * weeks) / minutes) : null,
    enoughFrom: weeks < LEAST ? addDays(first, LEAST * 7 - 1) : null,
  };
}
