/** Every question that a page may ask: a page that is kept is kept by the answers to them. */
import { BOOK_QUESTIONS } from '../views/books/book-page.ts';
import { OPEN_QUESTIONS } from '../views/books/open-book.ts';
import { CAUTION_QUESTIONS } from '../views/cautions/cautions-page.ts';
import { MAP_QUESTIONS } from '../views/drawings/in-words.ts';
import { FRAME_QUESTIONS } from '../views/frame/frame.ts';
import { KEEPER_QUESTIONS } from '../views/keepers/keepers.ts';
import { LEDGER_QUESTIONS } from '../views/ledger/ledger-of-day.ts';
import { LEDGER_YEAR_QUESTIONS } from '../views/ledger/ledger-page.ts';
import { LETTER_QUESTIONS } from '../views/letters/letter.ts';
import { MEASUREMENT_QUESTIONS } from '../views/measurements/measurements-page.ts';
import { METHOD_QUESTIONS } from '../views/methods/methods-page.ts';
import { FACT_QUESTIONS } from '../views/page/facts.ts';
import { SHEET_QUESTIONS } from '../views/page/sheet.ts';
import { BILL_QUESTIONS } from '../views/papers/bill-table.ts';
import { FILM_QUESTIONS } from '../views/pictures/film.ts';
import { COLLECTION_QUESTIONS } from '../views/pictures/picture-collections.ts';
import { POSITION_QUESTIONS } from '../views/position/position-page.ts';
import { IDENTITY_QUESTIONS } from '../views/register/identity-page.ts';
import { REGISTER_QUESTIONS } from '../views/register/register-page.ts';
import { SESSION_QUESTIONS } from '../views/session/session-page.ts';
import { THREAD_QUESTIONS } from '../views/session/threads.ts';
import { YEAR_QUESTIONS } from '../views/session/year-page.ts';
import { STOCK_QUESTIONS } from '../views/stock/stock-page.ts';
import { STORES_QUESTIONS } from '../views/stores/stores-page.ts';
import type { AnyQuestion } from './question.ts';

export const ALL_QUESTIONS: readonly AnyQuestion[] = [
  ...SHEET_QUESTIONS,
  ...FACT_QUESTIONS,
  ...OPEN_QUESTIONS,
  ...REGISTER_QUESTIONS,
  ...STORES_QUESTIONS,
  ...LEDGER_QUESTIONS,
  ...MAP_QUESTIONS,
  ...FRAME_QUESTIONS,
  ...POSITION_QUESTIONS,
  ...SESSION_QUESTIONS,
  ...KEEPER_QUESTIONS,
  ...BOOK_QUESTIONS,
  ...LETTER_QUESTIONS,
  ...YEAR_QUESTIONS,
  ...THREAD_QUESTIONS,
  ...LEDGER_YEAR_QUESTIONS,
  ...BILL_QUESTIONS,
  ...STOCK_QUESTIONS,
  ...COLLECTION_QUESTIONS,
  ...METHOD_QUESTIONS,
  ...MEASUREMENT_QUESTIONS,
  ...FILM_QUESTIONS,
  ...IDENTITY_QUESTIONS,
  ...CAUTION_QUESTIONS,
];

/** By their names. */
export const QUESTIONS: ReadonlyMap<string, AnyQuestion> = new Map(ALL_QUESTIONS.map((one) => [one.name, one]));
