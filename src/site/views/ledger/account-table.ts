import type { Markup } from '../page/html.ts';
import { linked } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { type Column, rows, type SetTable, setTable } from '../tables/table.ts';
import type { AccountTable, Cell, Heading, Measure } from './account.ts';

type Row = AccountTable['rows'][number];

/** An account with totals both ways; every figure opens the entries it sums. */
export function accountTable(sheet: Sheet, account: AccountTable, measure: Measure, label: string): SetTable {
  const { hours, amount } = sheet.figures;
  const figure = (cell: Cell | null | undefined): Markup | null =>
    cell ? linked(measure === 'minutes' ? hours(cell.sum.minutes) : amount(cell.sum.gross), sheet.link(cell.to)) : null;
  const opens = ({ to }: Heading): string | null => (to === null ? null : sheet.link(to));
  const columns = account.columns.map(
    (heading, n): Column<Row, AccountTable> => ({
      head: heading.name,
      opens: opens(heading),
      set: 'num',
      cell: ({ cells }) => figure(cells[n]),
      sum: ({ totals }) => figure(totals[n]),
    }),
  );
  return setTable<Row, AccountTable>({
    label: `${label}, ${account.of}`,
    caption: `${label}, ${account.of}`,
    set: `account of-${measure}${account.head === 'Year' ? ' turned' : ''}`,
    keepsRows: true,
    columns: [
      { head: account.head, names: true, cell: ({ heading }) => linked(heading.name, opens(heading)) },
      ...columns,
      {
        head: account.of === 'all years' ? 'Total' : account.of,
        set: 'num total',
        cell: ({ total }) => figure(total),
        sum: ({ total }) => figure(total),
      },
    ],
    groups: rows<Row, AccountTable>(account.rows),
    foot: [{ words: 'Total', sum: account }],
  });
}
