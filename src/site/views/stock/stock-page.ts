import type { Holding } from '../../../journal/ledger/stock-at.ts';
import type { Consumable, ConsumableId, Hazard } from '../../../journal/model.ts';
import { hazardsOfConsumable } from '../../../journal/registers/hazards.ts';
import type { RecordSheet, Sheet } from '../page/sheet.ts';
import { unitWords } from '../page/words.ts';
import type { SetTable } from '../tables/table.ts';
import { movementTable } from './stock-tables.ts';

export interface StockPage {
  readonly consumable: Consumable;
  /** What is left of it, in a sentence. */
  readonly left: string;
  /** Null where nothing of it has come or gone. */
  readonly movements: SetTable | null;
  readonly hazards: readonly Hazard[];
}

/** @throws RangeError when the record has no such consumable */
export function stockPage(sheet: RecordSheet, id: ConsumableId): StockPage {
  const account = sheet.record.ledger.stock.get(id);
  if (!account) throw new RangeError(`no consumable ${id}`);
  const { consumable, movements } = account;
  const unit = unitWords(consumable.unit);
  const { currency } = sheet.settings;
  const caption = `Quantities ${unit === 'each' ? 'by number' : `in ${unit}`}${currency === null ? '' : `, money in ${currency}`}`;
  return {
    consumable,
    left: leftWords(sheet, movements.at(-1)?.left ?? null, unit),
    movements: movements.length === 0 ? null : movementTable(sheet, account, caption),
    hazards: hazardsOfConsumable(consumable),
  };
}

function leftWords({ figures }: Sheet, left: Holding | null, unit: string): string {
  if (left === null) return 'Nothing of it has come or gone.';
  if (left.amount.n === 0n) return 'None is left.';
  return `${figures.quantity(left.amount)} ${unit === 'each' ? '' : `${unit} `}left${figures.hasMoney ? `, worth ${figures.money(left.value)} at cost` : ''}.`;
}
