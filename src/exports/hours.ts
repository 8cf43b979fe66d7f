import Fraction from 'fraction.js';
import { entriesAt, type LedgerSource } from '../journal/ledger/sums.ts';
import type { IsoDate } from '../journal/model.ts';
import { day, money, number, type Table } from './table.ts';

const COLUMNS = ['date', 'session', 'person', 'subsystem', 'position', 'part', 'minutes', 'hours', 'cost', 'what', 'title'];

/** Every time worked up to a date. */
export function hoursTable(books: LedgerSource, at: IsoDate | null): Table {
  const titles = new Map(books.journal.sessions.map(({ id, title }) => [id, title]));
  const labour = entriesAt(books, at).filter((entry) => entry.kind === 'labour');
  const rows = labour.map((entry) => [
    day(entry.date),
    entry.session,
    entry.person,
    entry.subsystem,
    entry.position,
    entry.part,
    entry.minutes,
    number(new Fraction(entry.minutes ?? 0, 60)),
    money(entry.gross, books.journal.settings),
    entry.what,
    titles.get(entry.session) ?? null,
  ]);
  return { name: 'hours', columns: COLUMNS, rows, totals: [{ words: 'Together', of: ['minutes', 'hours', 'cost'] }] };
}
