import { seriesOf } from '../../../journal/registers/measurements.ts';
import type { ItemRow } from '../../../journal/registers/open-items.ts';
import { html } from '../page/html.ts';
import { chargeLink, linked } from '../page/links.ts';
import type { RecordSheet } from '../page/sheet.ts';
import { rows, type SetTable, setTable } from '../tables/table.ts';
import { tickBox } from '../tables/tick-box.ts';

/** Things to buy, to take to a sale: what, what for and what is known of that, about how much, and a box to tick on paper. */
export function buyTable(sheet: RecordSheet, items: readonly ItemRow[]): SetTable {
  const price = items.reduce((sum, item) => sum + (item.price ?? 0), 0);
  return setTable<ItemRow, number>({
    label: 'Things to buy',
    set: 'to-buy',
    columns: [
      { head: 'What', names: true, cell: ({ id, what }) => linked(what, `#${id}`) },
      { head: 'For', cell: ({ on }) => chargeLink(sheet, on) },
      { head: 'Known of it', bare: true, cell: (item) => knownOf(sheet, item).map((words) => html`<div>${words}</div>`) },
      sheet.figures.hasMoney && {
        head: 'About',
        set: 'num',
        cell: (item) => item.price !== null && sheet.figures.money(item.price),
        sum: (total) => sheet.figures.money(total),
      },
      tickBox<ItemRow, number>('Bought'),
    ],
    groups: rows<ItemRow, number>(items),
    foot: price > 0 ? [{ words: 'Total, where a price is known', sum: price }] : [],
  });
}

/** What helps to know the right one: marks, finish and measures of every part of the position. */
function knownOf({ record }: RecordSheet, { on }: ItemRow): string[] {
  const home = record.journal.parts.get(on?.part ?? '')?.position ?? '';
  const parts = (record.journal.positions.get(home)?.parts ?? []).flatMap((id) => record.journal.parts.get(id) ?? []);
  return parts.flatMap(({ id, name, marks, finish }) => [
    ...(marks === null ? [] : [`${name}, marks: ${marks}`]),
    ...(finish === null ? [] : [`${name}, finish: ${finish}`]),
    ...seriesOf(record, id).flatMap(({ what, readings }) => `${name}, ${what}: ${readings.at(-1)?.measurement.value.text ?? ''}`),
  ]);
}
