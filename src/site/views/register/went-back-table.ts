import type { WentBack } from '../../../journal/registers/goes-back.ts';
import { inARow } from '../../../journal/replay/words.ts';
import { html, joined } from '../page/html.ts';
import { dayLink, partLink } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';

/** Parts that went back, with how they go as it was written, and when they were fitted. */
export function wentBackTable(sheet: Sheet, list: readonly WentBack[]): SetTable {
  return setTable<WentBack>({
    label: 'Went back, and nobody said whether as it was',
    columns: [
      { head: 'Part', names: true, cell: ({ part }) => partLink(sheet, part) },
      {
        head: 'Goes back',
        bare: true,
        cell: ({ ways }) =>
          joined(
            ways.map(
              ({ goesBack, stack }) => html`${[goesBack, inARow(stack)].filter((words) => words !== null && words !== '').join('; ')}`,
            ),
            '. ',
          ),
      },
      { head: 'Went on', set: 'date', cell: ({ fitted }) => dayLink(sheet, fitted) },
    ],
    groups: rows(list),
  });
}
