import { type Diagnostic, diagnostic } from '../diagnostics/diagnostic.ts';
import type { WorkedTime } from '../model.ts';
import type { JournalRecord } from '../record.ts';
import { addDays } from '../values/date.ts';
import { formatMinutes } from '../values/money.ts';

/** Longer than anybody works at a stretch, in minutes: a clock range that comes to more has most likely its ends changed round. */
const LONGEST = 16 * 60;

/** A clock range over midnight that is longer than a sitting can be. A length that is written out (`17h`) was meant. */
export function veryLongEvenings({ journal }: JournalRecord): Diagnostic[] {
  return journal.sessions.flatMap(({ date, hours }) =>
    hours.filter(({ span, minutes }) => span !== null && minutes > LONGEST).map((worked) => tooLong(worked, addDays(date, 1))),
  );
}

function tooLong({ text, minutes, place }: WorkedTime, nextDay: string): Diagnostic {
  const [, from, to] = /^\s*(\d{1,2}[:.]\d{2})\s*[-\u2013\u2014]\s*(\d{1,2}[:.]\d{2})\s*$/.exec(text) ?? [];
  const turned = from === undefined || to === undefined ? '' : `Write \`${to}-${from}\`, if it began at ${to}; `;
  const length = `${Math.floor(minutes / 60)}h${minutes % 60 === 0 ? '' : `${minutes % 60}m`}`;
  const over = to === undefined ? '' : `, to ${to} on ${nextDay}`;
  return diagnostic('A823', place, `${text} is read as ${formatMinutes(minutes)}${over}: longer than anybody works at a stretch.`, {
    hint: `${turned}if it was as long as that, write \`${length}\`.`,
  });
}
