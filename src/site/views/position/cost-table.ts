import type { PositionTotals } from '../../../journal/ledger/of-position.ts';
import { positionAddress } from '../../addresses.ts';
import { linked } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';

/** Positions one a line with what they took; each figure opens the account on the position's page. */
export function costTable(sheet: Sheet, positions: readonly PositionTotals[], label: string): SetTable {
  const { hours, amount, hasMoney } = sheet.figures;
  const account = ({ position }: PositionTotals): string => sheet.link(`${positionAddress(position.id)}#account`);
  return setTable<PositionTotals>({
    label,
    set: 'account positions',
    keepsRows: true,
    columns: [
      { head: 'Position', names: true, cell: ({ position }) => position.name },
      {
        head: 'Hours',
        set: 'num',
        cell: (row) => row.totals.minutes !== 0 && linked(hours(row.totals.minutes), account(row)),
      },
      hasMoney && { head: 'Job cost', set: 'num', cell: (row) => linked(amount(row.totals.cost), account(row)) },
    ],
    groups: rows(positions),
  });
}
