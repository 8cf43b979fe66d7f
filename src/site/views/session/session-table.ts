import type { Session } from '../../../journal/model.ts';
import { bookAddress, entryBooks } from '../books/entry-books.ts';
import { byMonth } from '../page/by-year.ts';
import { html, type Piece } from '../page/html.ts';
import { linked } from '../page/links.ts';
import { dateOfSession } from '../page/long-lists.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { counted, listed } from '../page/words.ts';
import { type Column, type Group, type SetTable, setTable } from '../tables/table.ts';
import { type SessionFigures, sessionFigures } from './session-facts.ts';

interface SessionRow {
  readonly session: Session;
  readonly facts: SessionFigures;
}

/** What the sessions of a month come to, and the book of its entries; null where nothing was booked. */
interface MonthSum {
  readonly minutes: number;
  readonly cost: number;
  readonly book: string | null;
}

/** Sessions by month, newest first: date, title, hours, cost, and what each holds. */
export function sessionTable(sheet: RecordSheet, sessions: readonly Session[]): SetTable {
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
    sum: (month) => opened(written(of(month)), month.book),
  });
  return setTable<SessionRow, MonthSum>({
    label: 'Sessions by month',
    set: 'schedule sessions',
    columns: [
      { head: 'Day', set: 'date', bare: true, cell: ({ session }) => figures.day(session.date) },
      { head: 'Session', names: true, set: 'title', cell: ({ session }) => linked(session.title, sheet.toSession(session.id)) },
      { head: 'In the note', bare: true, cell: ({ session }) => holds(session) },
      figure('Hours', ({ minutes }) => minutes, figures.time),
      figures.hasMoney && figure('Job cost', ({ cost }) => cost, figures.amount),
    ],
    groups: byMonth(sessions, dateOfSession).map(({ month, things }) => monthOf(sheet, month, things)),
  });
}

function monthOf(sheet: RecordSheet, month: string, sessions: readonly Session[]): Group<SessionRow, MonthSum> {
  const list = sessions.map((session) => ({ session, facts: sessionFigures(sheet, session) }));
  const sum = (of: (facts: SessionFigures) => number): number => list.reduce((total, { facts }) => total + of(facts), 0);
  const booked = entryBooks(sheet.record).has(`month-${month}`);
  return {
    id: month,
    head: {
      words: html`${sheet.figures.month(month)}`,
      set: 'month-total',
      sum: {
        minutes: sum(({ minutes }) => minutes),
        cost: sum(({ cost }) => cost),
        book: booked ? sheet.link(bookAddress(`month-${month}`)) : null,
      },
    },
    rows: list,
  };
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
