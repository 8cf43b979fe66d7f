import type { StockRow } from '../../../journal/ledger/stock-at.ts';
import type { StockAccount, StockMovement } from '../../../journal/record.ts';
import { type Address, sessionAddress } from '../../addresses.ts';
import { entryAddress } from '../ledger/entry-place.ts';
import { html, type Markup } from '../page/html.ts';
import type { Sheet } from '../page/sheet.ts';
import { shownHoldings, shownMovements } from './adding-up.ts';
import { movementAnchor } from './stock-pages.ts';

const MOVEMENT_WORDS: Readonly<Record<StockMovement['kind'], string>> = {
  opening: 'opening stock',
  bought: 'bought',
  used: 'used',
  counted: 'counted',
  returned: 'given back',
};

/** The movements of a consumable, in order, with what each left on the shelf; each leads to its entry in the session. */
export function stockRows(sheet: Sheet, { movements }: StockAccount): string {
  const { figures } = sheet;
  const shown = shownMovements(movements);
  return movements
    .map((movement, n) => {
      const { kind, date, value, left, because } = movement;
      const { amount, left: rest } = shown[n] as (typeof shown)[number];
      const from = addressOf(sheet, movement);
      const when = from === null ? figures.shortDate(date) : html`<a href="${sheet.link(from)}">${figures.shortDate(date)}</a>`;
      const why = because !== null && html`<span class="sub">${because}</span>`;
      return html`<tr id="${movementAnchor(n + 1)}"><td class="date">${when}</td><td>${MOVEMENT_WORDS[kind]}${why}</td><td class="num" data-label="Quantity">${figures.quantity(amount)}</td><td class="num" data-label="Money">${figures.amount(value)}</td><td class="num" data-label="Left">${figures.quantity(rest)}</td><td class="num" data-label="Left, money">${figures.amount(left.value)}</td></tr>`
        .markup;
    })
    .join('');
}

/** The entry a movement was made by; its session, where a stock-take changed nothing in the books. */
function addressOf(sheet: Sheet, { session, entry: id }: StockMovement): Address | null {
  if (session === null) return null;
  const entry = sheet.index.entriesOf.get(session)?.find((one) => one.id === id || one.id.startsWith(`${id}-`));
  return entry ? entryAddress(entry) : sessionAddress(session);
}

/** What the movements add up to: opening and bought are used and left. */
export function stockTotals(sheet: Sheet, stock: StockRow): string {
  const { figures } = sheet;
  const amounts = shownHoldings(stock);
  const row = (id: keyof typeof amounts, words: string): Markup =>
    html`<tr id="${id}"><th scope="row" colspan="2">${words}</th><td class="num" data-label="Quantity">${figures.quantity(amounts[id])}</td><td class="num" data-label="Money">${figures.amount(stock[id].value)}</td><td></td><td></td></tr>`;
  return [
    row('opening', 'Opening stock'),
    row('bought', 'Bought, less what was given back'),
    row('used', 'Used, with what stock-takes found missing'),
    row('left', 'Left'),
  ]
    .map(({ markup }) => markup)
    .join('');
}
