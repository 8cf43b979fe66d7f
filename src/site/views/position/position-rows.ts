import type { PositionTotals } from '../../../journal/ledger/of-position.ts';
import { positionAddress } from '../../addresses.ts';
import { html } from '../page/html.ts';
import type { Sheet } from '../page/sheet.ts';

/** Positions one a line with what they took; each figure opens the account on the position's page. */
export function positionRows(sheet: Sheet, rows: readonly PositionTotals[]): string {
  const { figures } = sheet;
  return rows
    .map(({ position, totals: { minutes, cost } }) => {
      const to = sheet.link(`${positionAddress(position.id)}#account`);
      const hours = minutes !== 0 && html`<a href="${to}">${figures.hours(minutes)}</a>`;
      return html`<tr><th scope="row">${position.name}</th><td class="num">${hours}</td><td class="num"><a href="${to}">${figures.amount(cost)}</a></td></tr>`
        .markup;
    })
    .join('');
}
