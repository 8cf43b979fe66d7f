import type { OffVehicle } from '../../../journal/registers/stores.ts';
import { html } from '../page/html.ts';
import { dayLink, partLink, sub } from '../page/links.ts';
import type { Sheet } from '../page/sheet.ts';
import { whereNowLink } from '../stores/where.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';

/** Originals that are off the vehicle, and where; what is gone says how and why. */
export function originalsOffTable(sheet: Sheet, originals: readonly OffVehicle[]): SetTable {
  return setTable<OffVehicle>({
    label: 'Originals off the vehicle',
    columns: [
      { head: 'Part', names: true, cell: ({ part }) => partLink(sheet, part) },
      { head: 'How many', set: 'num', cell: ({ count }) => count },
      { head: 'Where', bare: true, cell: ({ where, note, stayedWords }) => html`${whereNowLink(sheet, where, stayedWords)}${sub(note)}` },
      { head: 'Since', set: 'date', cell: ({ since }) => dayLink(sheet, since) },
    ],
    groups: rows(originals),
  });
}
