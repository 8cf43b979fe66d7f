import type { PositionTotals } from '../../../journal/ledger/of-position.ts';
import { positionAddress } from '../../addresses.ts';
import { linked } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { type AccountName, accountName, leavesHoursOut } from '../page/words.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';

const TOOK: Readonly<Record<AccountName, string>> = {
  'Hours and money': 'Hours and job cost',
  Hours: 'Hours',
  Money: 'Job cost without labour',
};

/** `Hours and job cost of each position that took any, in GBP.` Of a copy that keeps neither there is no such page. */
export function costWords(sheet: Sheet): string {
  const { currency } = sheet.settings;
  return `${TOOK[accountName(sheet) ?? 'Hours']} of each position that took any${currency === null ? '' : `, in ${currency}`}.`;
}

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
      !leavesHoursOut(sheet.copy) && {
        head: 'Hours',
        set: 'num',
        cell: (row) => row.totals.minutes !== 0 && linked(hours(row.totals.minutes), account(row)),
      },
      hasMoney && { head: 'Job cost', set: 'num', cell: (row) => linked(amount(row.totals.cost), account(row)) },
    ],
    groups: rows(positions),
  });
}
