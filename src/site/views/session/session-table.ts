import type { Session } from '../../../journal/model.ts';
import { bookAddress, entryBooks } from '../books/entry-books.ts';
import { byMonth } from '../page/by-year.ts';
import { html, type Piece } from '../page/html.ts';
import { linked } from '../page/links.ts';
import { dateOfSession } from '../page/long-lists.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { counted, leavesHoursOut, listed } from '../page/words.ts';
import { type Column, type Group, type SetTable, setTable } from '../tables/table.ts';
import { type SessionFigures, sessionFigures } from './session-facts.ts';

interface SessionRow {
  readonly session: Session;
  readonly facts: SessionFigures;
}

/** What the sessions of a month come to, and whether there is a book of its entries: there is none where nothing was booked. */
interface MonthSum {
  readonly month: string;
  readonly minutes: number;
  readonly cost: number;
  readonly booked: boolean;
}

/** The sessions of a month, and what they come to. */
export interface MonthOfSessions {
  readonly sum: MonthSum;
  readonly rows: readonly SessionRow[];
}

/** Newest first. */
export function sessionMonths(sheet: RecordSheet, sessions: readonly Session[]): readonly MonthOfSessions[] {
  return byMonth(sessions, dateOfSession).map(({ month, things }) => monthOf(sheet, month, things));
}

/** Sessions by month: date, title, hours, cost, and what each holds. */
export function sessionTable(sheet: Sheet, months: readonly MonthOfSessions[]): SetTable {
  const { figures } = sheet;
  const opened = (words: string, to: string | null): Piece => to !== null && linked(words, to);
  const figure = (
    head: string,
    of: (row: SessionFigures | MonthSum) => number,
    written: (n: number) => string,
  ): Column<SessionRow, MonthSum> => ({
    head,
    set: 'num',
    cell: ({ session, facts }) => of(facts) !== 0 && linked(written(of(facts)), `${sheet.toSession(session.id)}#account`),
    sum: (sum) => opened(written(of(sum)), sum.booked ? sheet.link(bookAddress(`month-${sum.month}`)) : null),
  });
  return setTable<SessionRow, MonthSum>({
    label: 'Sessions by month',
    set: 'schedule sessions',
    columns: [
      { head: 'Day', set: 'date', bare: true, cell: ({ session }) => figures.day(session.date) },
      { head: 'Session', names: true, set: 'title', cell: ({ session }) => linked(session.title, sheet.toSession(session.id)) },
      { head: 'In the note', bare: true, cell: ({ session }) => holds(session) },
      !leavesHoursOut(sheet.copy) && figure('Hours', ({ minutes }) => minutes, figures.time),
      figures.hasMoney && figure('Job cost', ({ cost }) => cost, figures.amount),
    ],
    groups: months.map((month) => groupOf(sheet, month)),
  });
}

const groupOf = ({ figures }: Sheet, { sum, rows }: MonthOfSessions): Group<SessionRow, MonthSum> => ({
  id: sum.month,
  head: { words: html`${figures.month(sum.month)}`, set: 'month-total', sum },
  rows,
});

function monthOf(sheet: RecordSheet, month: string, sessions: readonly Session[]): MonthOfSessions {
  const list = sessions.map((session) => ({ session, facts: sessionFigures(sheet, session) }));
  const sum = (of: (facts: SessionFigures) => number): number => list.reduce((total, { facts }) => total + of(facts), 0);
  const booked = entryBooks(sheet.record).has(`month-${month}`);
  return { sum: { month, minutes: sum(({ minutes }) => minutes), cost: sum(({ cost }) => cost), booked }, rows: list };
}

/** What a note has besides its prose: `3 parts, 1 decision and 4 pictures`. */
function holds({ parts, decisions, pictures }: Session): string {
  const held: readonly (readonly [number, string])[] = [
    [new Set(parts.map(({ part }) => part)).size, 'part'],
    [decisions.length, 'decision'],
    [pictures.length, 'picture'],
  ];
  return listed(held.filter(([n]) => n > 0).map(([n, word]) => counted(n, word)));
}
