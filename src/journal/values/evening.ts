/** Which evening a moment belongs to: that of a picture, and that of a note begun after midnight. */
import { addDays, type IsoDate } from './date.ts';

/** Until this hour of the night it is still the evening before. */
export const EVENING_ENDS = 4;

/** @param clock what a clock shows, `YYYY-MM-DDTHH:MM` and whatever follows */
export function eveningOf(clock: string): IsoDate {
  const [day = '', time = ''] = clock.split('T');
  return Number(time.slice(0, 2)) < EVENING_ENDS ? addDays(day, -1) : day;
}
