import type { Holding } from '../../../journal/ledger/stock-at.ts';
import type { Consumable, ConsumableId, Hazard } from '../../../journal/model.ts';
import type { StockAccount } from '../../../journal/record.ts';
import { hazardsOfConsumable } from '../../../journal/registers/hazards.ts';
import type { Address } from '../../addresses.ts';
import { type AnyQuestion, shown } from '../../kept/question.ts';
import type { Sheet } from '../page/sheet.ts';
import { unitWords } from '../page/words.ts';
import type { SetTable } from '../tables/table.ts';
import { movementTable, sourceOf } from './stock-tables.ts';

export interface StockPage {
  readonly consumable: Consumable;
  /** What is left of it, in a sentence. */
  readonly left: string;
  /** Null where nothing of it has come or gone. */
  readonly movements: SetTable | null;
  readonly hazards: readonly Hazard[];
}

interface Stock {
  readonly account: StockAccount;
  /** What each movement was made by, in the same order. */
  readonly sources: readonly (Address | null)[];
}

const STOCK = shown('stock', (sheet, id: ConsumableId): Stock => {
  const account = sheet.record.ledger.stock.get(id);
  if (!account) throw new RangeError(`no consumable ${id}`);
  return { account, sources: account.movements.map((movement) => sourceOf(sheet, movement)) };
});

export const STOCK_QUESTIONS: readonly AnyQuestion[] = [STOCK];

/** @throws RangeError when the record has no such consumable */
export function stockPage(sheet: Sheet, id: ConsumableId): StockPage {
  const { account, sources } = sheet.ask(STOCK, id);
  const { consumable, movements } = account;
  const unit = unitWords(consumable.unit);
  const { currency } = sheet.settings;
  const caption = `Quantities ${unit === 'each' ? 'by number' : `in ${unit}`}${currency === null ? '' : `, money in ${currency}`}`;
  return {
    consumable,
    left: leftWords(sheet, movements.at(-1)?.left ?? null, unit),
    movements: movements.length === 0 ? null : movementTable(sheet, account, sources, caption),
    hazards: hazardsOfConsumable(consumable),
  };
}

function leftWords({ figures }: Sheet, left: Holding | null, unit: string): string {
  if (left === null) return 'Nothing of it has come or gone.';
  if (left.amount.n === 0n) return 'None is left.';
  return `${figures.quantity(left.amount)} ${unit === 'each' ? '' : `${unit} `}left${figures.hasMoney ? `, worth ${figures.money(left.value)} at cost` : ''}.`;
}
