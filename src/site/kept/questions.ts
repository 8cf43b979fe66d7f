/** Every question that a page may ask: a page that is kept is kept by the answers to them. */
import { OPEN_QUESTIONS } from '../views/books/open-book.ts';
import { MAP_QUESTIONS } from '../views/drawings/in-words.ts';
import { FRAME_QUESTIONS } from '../views/frame/frame.ts';
import { KEEPER_QUESTIONS } from '../views/keepers/keepers.ts';
import { LEDGER_QUESTIONS } from '../views/ledger/ledger-of-day.ts';
import { FACT_QUESTIONS } from '../views/page/facts.ts';
import { SHEET_QUESTIONS } from '../views/page/sheet.ts';
import { POSITION_QUESTIONS } from '../views/position/position-page.ts';
import { REGISTER_QUESTIONS } from '../views/register/register-page.ts';
import { SESSION_QUESTIONS } from '../views/session/session-page.ts';
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
];

/** By their names. */
export const QUESTIONS: ReadonlyMap<string, AnyQuestion> = new Map(ALL_QUESTIONS.map((one) => [one.name, one]));
