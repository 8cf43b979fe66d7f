/** The pages of a year: its sessions in a list, where one page would not hold those of all years, and its prose as one reading. */
import { type AnyQuestion, shown } from '../../kept/question.ts';
import { ofYear, pagedYears } from '../page/by-year.ts';
import { dateOfSession, SESSIONS_A_PAGE } from '../page/long-lists.ts';
import type { Sheet } from '../page/sheet.ts';
import { type ReadingOfYear, readingOfYear } from './chapters.ts';
import { type MonthOfSessions, sessionMonths } from './session-table.ts';

export interface SessionsOfYear {
  /** The years with pages before and after. */
  readonly earlier: string | null;
  readonly later: string | null;
  readonly months: readonly MonthOfSessions[];
}

const SESSIONS = shown('sessions of a year', (sheet, year: string): SessionsOfYear => {
  const { sessions } = sheet.record.journal;
  const years = pagedYears(sessions, dateOfSession, SESSIONS_A_PAGE);
  const at = years.indexOf(year);
  return {
    earlier: years[at + 1] ?? null,
    later: years[at - 1] ?? null,
    months: sessionMonths(sheet, ofYear(sessions, dateOfSession, year)),
  };
});

const READING = shown('reading of a year', ({ record }, year: string): Promise<ReadingOfYear> => readingOfYear(record, year));

export const YEAR_QUESTIONS: readonly AnyQuestion[] = [SESSIONS, READING];

export const sessionsOfYear = (sheet: Sheet, year: string): SessionsOfYear => sheet.ask(SESSIONS, year);

export const readingOf = (sheet: Sheet, year: string): Promise<ReadingOfYear> => sheet.ask(READING, year);
