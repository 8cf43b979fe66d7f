import type { IsoDate } from '../journal/model.ts';
import { readDate } from '../journal/values/date.ts';
import { eveningBy, todayBy } from '../site/today.ts';
import type { Option, OptionValues } from './command.ts';
import type { Effects } from './effects.ts';
import { EXIT, Refusal } from './exit-codes.ts';

/** The record's day, where another than that of the newest note is asked for. */
export const TO: Option = { type: 'string', value: 'DATE', help: 'the record as it stood on this day (else on that of the newest note)' };

/**
 * The day that an option names; null when it is not given.
 *
 * @throws Refusal when it is not a date
 */
export function dayOption(values: OptionValues, name: 'from' | 'to'): IsoDate | null {
  const written = values[name];
  if (typeof written !== 'string') return null;
  const read = readDate(written);
  if (!read.ok) throw new Refusal(EXIT.notUnderstood, [`--${name}: ${read.problem}`, read.hint].filter(Boolean).join(' '));
  return read.value;
}

/** The day of a new note. */
export const DATE: Option = {
  type: 'string',
  value: 'DATE',
  help: 'the day of the work (else today; until four in the night, the evening before)',
};

/**
 * The day of a new note: that of `--date`, else that of this evening, which is told where it is not today.
 *
 * @throws Refusal when it is no date, or still to come
 */
export function noteDate(values: OptionValues, effects: Effects): string {
  const today = todayBy(effects.env, effects.now());
  const written = values.date;
  if (typeof written !== 'string') {
    const evening = eveningBy(effects.env, effects.now());
    if (evening !== today)
      effects.err(`It is past midnight, so the note is of the evening of ${evening}; --date ${today} says otherwise.\n`);
    return evening;
  }
  const read = readDate(written);
  if (!read.ok) throw new Refusal(EXIT.notUnderstood, [read.problem, read.hint].filter(Boolean).join(' '));
  if (read.value > today) throw new Refusal(EXIT.notUnderstood, `${read.value} is in the future; today is ${today}.`);
  return read.value;
}
