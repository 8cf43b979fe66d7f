import type { IsoDate } from '../../journal/model.ts';
import type { RecordSheet } from '../views/page/sheet.ts';
import type { Question, Word } from './question.ts';
import { recordUpTo } from './up-to.ts';

/**
 * What one page shows of a past day, which follows from what is declared and the notes up to then alone. What else the page asks
 * of that day does too, and is not noted.
 */
/*#__NO_SIDE_EFFECTS__*/
export function shownThen<Words extends readonly [date: IsoDate, ...more: Word[]], Answer>(
  name: string,
  answer: (sheet: RecordSheet, ...words: Words) => Answer,
): Question<Words, Answer> {
  return { name, answer, shared: false, key: ({ record }, ...[date]) => recordUpTo(record, date), day: (...[date]) => date };
}
