import type { IsoDate } from '../model.ts';
import { addDays } from '../values/date.ts';

/** Terms that say a number of days and nothing else: `14 days`, `net 30 days`, `within 14 days of the statement`. */
const SO_MANY_DAYS =
  /^(?:(?:net|within|payable(?: within| in)?|payment (?:within|in)|due (?:within|in)) )?(\d{1,3}) days?(?: net| (?:of|from) (?:the |this )?(?:statement|date))?\.?$/i;

/**
 * The day by which a statement is to be paid: so many days after its last one.
 *
 * @param terms as journal.yaml has them. Null for those that say anything else than a number of days
 */
export function dueDay(terms: string | null, statement: IsoDate): IsoDate | null {
  const days = SO_MANY_DAYS.exec(terms?.replace(/\s+/g, ' ').trim() ?? '')?.[1];
  return days === undefined ? null : addDays(statement, Number(days));
}
