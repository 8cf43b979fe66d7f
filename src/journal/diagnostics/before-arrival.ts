import { type Diagnostic, diagnostic } from './diagnostic.ts';
import type { Place } from './place.ts';

/**
 * A note of a day on which the vehicle was not there yet.
 *
 * @param hint what to do about it
 */
export function beforeArrival(place: Place, date: string, arrived: string, hint: string): Diagnostic {
  return diagnostic('A802', place, `${date} is before the vehicle arrived, on ${arrived}.`, { hint });
}
