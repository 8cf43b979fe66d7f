/** What a page asks of the record: a name, what it is asked of, and an answer that is plain data. */
import type { IsoDate } from '../../journal/model.ts';
import type { RecordSheet } from '../views/page/sheet.ts';

/** What a question can be asked with, so that it can be asked again by another build. */
export type Word = string | number | boolean | null;

export interface Question<Words extends readonly Word[], Answer> {
  /** No other question has it. */
  readonly name: string;
  /** What the page is told; a thing that is not there any more is told as such and is no error. */
  answer(sheet: RecordSheet, ...words: Words): Answer;
  /** Whether it is answered alike whatever page asks: there are no links in it. */
  readonly shared: boolean;
  /** What the answer follows from, where working that out is much less work than answering; null where it is not. */
  key?(sheet: RecordSheet, ...words: Words): unknown;
  /** The day that it is asked of, where the answer follows from what is declared and the notes up to then alone. */
  day?(...words: Words): IsoDate;
}

/**
 * A question about a thing, asked by many pages: a name, an address, a picture.
 *
 * @param day see there
 */
/*#__NO_SIDE_EFFECTS__*/
export function lookup<Words extends readonly Word[], Answer>(
  name: string,
  answer: (sheet: Pick<RecordSheet, 'record' | 'index' | 'figures'>, ...words: Words) => Answer,
  day?: (...words: Words) => IsoDate,
): Question<Words, Answer> {
  return { name, answer, shared: true, ...(day && { day }) };
}

/**
 * What one page shows, as its view function tells it.
 *
 * @param key see there
 */
/*#__NO_SIDE_EFFECTS__*/
export function shown<Words extends readonly Word[], Answer>(
  name: string,
  answer: (sheet: RecordSheet, ...words: Words) => Answer,
  key?: (sheet: RecordSheet, ...words: Words) => unknown,
): Question<Words, Answer> {
  return { name, answer, shared: false, ...(key && { key }) };
}

/** Any question, for whoever keeps answers and does not look into them. */
export interface AnyQuestion {
  readonly name: string;
  readonly shared: boolean;
  answer(sheet: RecordSheet, ...words: never[]): unknown;
  key?(sheet: RecordSheet, ...words: never[]): unknown;
}
