import { paceOf } from '../../../journal/registers/pace.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { counted } from '../page/words.ts';

/**
 * `41 h in the 13 weeks up to 18 December 2025, 3 h 9 min a week. 58 h of what is open has hours: about 18 weeks at that
 * pace; 6 have none.` Null where nothing open has hours.
 */
export function paceWords({ record, figures }: RecordSheet): string | null {
  const pace = paceOf(record, null);
  if (pace === null) return null;
  const { weeks, minutes, ahead, unsaid, weeksAhead, enoughFrom } = pace;
  const none = unsaid === 0 ? '' : `; ${unsaid} ${unsaid === 1 ? 'has' : 'have'} none`;
  const open = `${figures.time(ahead)} of what is open has hours`;
  const until = figures.date(record.day);
  if (weeksAhead !== null) {
    const perWeek = figures.time(Math.round(minutes / weeks));
    return `${figures.time(minutes)} in the ${weeks} weeks up to ${until}, ${perWeek} a week. ${open}: about ${counted(weeksAhead, 'week')} at that pace${none}.`;
  }
  const why =
    enoughFrom === null
      ? `too few of the ${weeks} weeks up to ${until} have any`
      : `there is a pace to go by from ${figures.date(enoughFrom)} on, when eight weeks have passed`;
  return `${open}${none}. How long that takes cannot be told from the hours so far: ${why}.`;
}
