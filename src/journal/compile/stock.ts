/** What a note says was used of the stock, and counted. */
import type { StockTake, Use } from '../model.ts';
import type { SessionSource } from '../schema/session.ts';
import { convertTo } from '../values/quantity.ts';
import type { NoteContext } from './session.ts';
import { each } from './work.ts';

export function usesOf(list: SessionSource['used'], context: NoteContext): Use[] {
  return each(list, (entry, i) => {
    const consumable = context.names.consumable(entry.consumable, context.place('used', i, 'consumable'));
    const on = context.names.charge(entry.on, context.place('used', i, 'on'));
    if (consumable === null) return null;
    const place = context.place('used', i, 'amount');
    const amount = context.out.take(convertTo(entry.amount, consumable.unit), place);
    if (on === null || amount === null) return null;
    return { consumable: consumable.id, amount: entry.amount, on, place: context.place('used', i) };
  });
}

export function countedOf(list: SessionSource['counted'], context: NoteContext): StockTake[] {
  return each(list, (entry, i) => {
    const consumable = context.names.consumable(entry.consumable, context.place('counted', i, 'consumable'));
    if (consumable === null) return null;
    const place = context.place('counted', i, 'amount');
    if (context.out.take(convertTo(entry.amount, consumable.unit), place) === null) return null;
    return { consumable: consumable.id, amount: entry.amount, because: entry.because, place: context.place('counted', i) };
  });
}
