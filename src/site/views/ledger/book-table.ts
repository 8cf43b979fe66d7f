import type { Totals } from '../../../journal/ledger/totals.ts';
import { linked } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { type Column, rows, type SetTable, setTable } from '../tables/table.ts';
import type { BookRow } from './book-rows.ts';
import type { OpenBook } from './open-book.ts';

/**
 * Books of entries one a line with what they came to: by subsystem, by kind, by person.
 *
 * @param whole the last line: what all of them come to, where every entry is in one of them
 */
export function bookTable(sheet: Sheet, books: readonly BookRow[], head: string, open: OpenBook, whole: Totals | null = null): SetTable {
  const { hours, amount } = sheet.figures;
  const figure = (name: string, of: (totals: Totals) => number, written: (n: number) => string): Column<BookRow, Totals> => ({
    head: name,
    set: 'num',
    cell: ({ slug, totals }) => of(totals) !== 0 && linked(written(of(totals)), open(slug)),
    sum: (totals) => of(totals) !== 0 && linked(written(of(totals)), open('all')),
  });
  return setTable<BookRow, Totals>({
    label: `Totals by ${head.toLowerCase()}`,
    set: 'account totals',
    keepsRows: true,
    columns: [
      { head, names: true, cell: ({ name }) => name },
      figure('Hours', ({ minutes }) => minutes, hours),
      figure('Paid', ({ paid }) => paid, amount),
      figure('Job cost', ({ cost }) => cost, amount),
    ],
    groups: rows<BookRow, Totals>(books),
    foot: whole ? [{ words: 'Total', sum: whole }] : [],
  });
}
