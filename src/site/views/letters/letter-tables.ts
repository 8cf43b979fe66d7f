import { openNow } from '../books/open-book.ts';
import { linked } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';
import type { Letter } from './letter.ts';

type Left = Letter['left'][number];

/** What a month took, and what is left of the budgets; each figure opens the entries that it sums. None where there is nothing to tell. */
export function letterTables(sheet: Sheet, { month, took, left }: Letter): readonly SetTable[] {
  const open = openNow(sheet);
  const money = left.some((one) => one.money !== '');
  const hours = left.some((one) => one.hours !== '');
  const figures = setTable<Letter['took'][number]>({
    label: 'What it took',
    caption: 'What it took',
    headless: true,
    keepsRows: true,
    columns: [
      { head: 'What', names: true, cell: ([name]) => name },
      { head: 'Figure', set: 'num', cell: ([, figure]) => linked(figure, open(`month-${month}`)) },
    ],
    groups: rows(took),
  });
  const budgets = setTable<Left>({
    label: 'Left of the budgets',
    caption: 'Left of the budgets',
    keepsRows: true,
    columns: [
      { head: 'Subsystem', names: true, cell: ({ name }) => name },
      hours && {
        head: 'Hours',
        set: 'num',
        cell: ({ subsystem, hours: left }) => left !== '' && linked(left, open(`subsystem-${subsystem}`)),
      },
      money && {
        head: 'Money',
        set: 'num',
        cell: ({ subsystem, money: left }) => left !== '' && linked(left, open(`subsystem-${subsystem}`)),
      },
    ],
    groups: rows(left),
  });
  return [...(took.length === 0 ? [] : [figures]), ...(left.length === 0 ? [] : [budgets])];
}
