import type { StockAccount, StockMovement } from '../../journal/record.ts';
import { html } from './html.ts';
import type { Sheet } from './sheet.ts';

const MOVEMENT_WORDS: Readonly<Record<StockMovement['kind'], string>> = {
  opening: 'opening stock',
  bought: 'bought',
  used: 'used',
  counted: 'counted',
  returned: 'given back',
};

/** The movements of a consumable, in order, with what each left on the shelf. */
export function stockRows(sheet: Sheet, { movements }: StockAccount): string {
  const { figures } = sheet;
  return movements
    .map(({ kind, date, session, amount, value, left, because }) => {
      const when = session === null ? figures.shortDate(date) : html`<a href="${sheet.toSession(session)}">${figures.shortDate(date)}</a>`;
      const why = because !== null && html`<span class="sub">${because}</span>`;
      return html`<tr><td class="date">${when}</td><td>${MOVEMENT_WORDS[kind]}${why}</td><td class="num">${figures.quantity(amount)}</td><td class="num">${figures.amount(value)}</td><td class="num">${figures.quantity(left.amount)}</td><td class="num">${figures.amount(left.value)}</td></tr>`
        .markup;
    })
    .join('');
}
