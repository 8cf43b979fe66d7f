import type { JournalRecord } from '../journal/record.ts';
import { dayInMarkup } from './day-mark.ts';
import { figuresOf } from './views/page/figures.ts';

/** The record's day as it stands at the foot of every page. */
export function dayOnPages({ journal, day }: Pick<JournalRecord, 'journal' | 'day'>): string {
  return dayInMarkup(figuresOf(journal.settings).date(day));
}
