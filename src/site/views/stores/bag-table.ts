import type { BagRow } from '../../../journal/registers/bags.ts';
import { inARow } from '../../../journal/replay/words.ts';
import { hazardMark } from '../cautions/hazard-mark.ts';
import { html, joined } from '../page/html.ts';
import { dayLink, linked, partLink } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';
import { tickBox } from '../tables/tick-box.ts';
import { goneFrom } from './bag-entry.ts';
import { hazardsIn } from './stores-page.ts';

/** Filled bags one a line: number, what each holds, the parts of the catalogue in it, what it came off. */
export function bagTable(sheet: Sheet, bags: readonly BagRow[], label: string): SetTable {
  return setTable<BagRow>({
    label,
    set: 'store bagged',
    columns: [
      { head: 'Bag', names: true, bare: false, set: 'bag', cell: ({ bag }) => linked(bag, sheet.toBag(bag)) },
      {
        head: 'Holds',
        set: 'holds',
        bare: true,
        cell: (bag) => html`${inARow(bag.filling.holds)}${hazardMark(sheet, hazardsIn(sheet, [bag]))}${goneFrom(sheet, bag)}`,
      },
      {
        head: 'Parts of the catalogue',
        set: 'held',
        cell: ({ parts }) =>
          joined(
            parts.map(({ part, count }) => html`${count > 1 && `${count} `}${partLink(sheet, part)}`),
            ', ',
          ),
      },
      { head: 'Off', set: 'off', cell: ({ filling: { off } }) => off !== null && partLink(sheet, off) },
      {
        head: 'Since',
        set: 'date',
        cell: ({ filled }) => dayLink(sheet, filled),
      },
      tickBox('Seen'),
    ],
    groups: rows(bags),
  });
}
