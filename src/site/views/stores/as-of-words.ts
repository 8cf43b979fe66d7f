import type { Moment } from '../../../journal/record.ts';
import type { Sheet } from '../page/sheet.ts';
import { listed } from '../page/words.ts';

/** Of which days a condition is told: `as found and as of 9 November 2026`; what was written down once says nothing of later days. */
export function asOfWords({ settings }: Pick<Sheet, 'settings'>, days: readonly Moment[], written: Sheet['date']): string {
  const asFound = days.some((day) => isAsFound(day, settings.arrived));
  const of = days.filter((day) => !isAsFound(day, settings.arrived)).map(({ date }) => written(date));
  return [...(asFound ? ['as found'] : []), ...(of.length > 0 ? [`as of ${listed(of)}`] : [])].join(' and ');
}

const isAsFound = ({ date, session }: Moment, arrived: string): boolean => session === null && date <= arrived;
