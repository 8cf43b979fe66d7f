/** What a note says was used of the stock, and counted. */
import type { ConsumableId, StockTake, Use } from '../model.ts';
import type { NoteFields } from '../read/journal-source.ts';
import type { WrittenEntry } from '../read/written-entry.ts';
import { stockAmount } from '../values/packs.ts';
import type { Quantity } from '../values/quantity.ts';
import { believed, given } from './believed.ts';
import { UNDER_GENERAL } from './context.ts';
import type { NoteAtHand } from './session.ts';

export function usesOf(list: NoteFields['used'], context: NoteAtHand): Use[] {
  return believed(list, (entry) => {
    const consumable = stockOf(entry, context);
    const on = entry.says.on === null ? UNDER_GENERAL : context.names.charge(entry.says.on, entry.placeOf('on'));
    return consumable === null || on === null ? null : { ...entry.says, consumable, on, place: entry.place };
  });
}

export function countedOf(list: NoteFields['counted'], context: NoteAtHand): StockTake[] {
  return believed(list, (entry) => {
    const consumable = stockOf(entry, context);
    const value = given(entry.says.value, (written) => context.names.money(written, entry.placeOf('value')));
    if (value !== null && value < 0) {
      context.out.report('A808', entry.placeOf('value'), 'The value of what was found is negative.', { hint: 'It is 0 or more.' });
    }
    const on = given(entry.says.on, (written) => context.names.charge(written, entry.placeOf('on')));
    if (consumable === null || (entry.says.on !== null && on === null) || (entry.says.value !== null && (value === null || value < 0)))
      return null;
    return { ...entry.says, consumable, on, value, place: entry.place };
  });
}

/** The consumable, where it is known and the amount is one of its unit. */
function stockOf(
  { says, placeOf }: WrittenEntry<{ consumable: string; amount: Quantity }>,
  { names, out }: NoteAtHand,
): ConsumableId | null {
  const consumable = names.consumable(says.consumable, placeOf('consumable'));
  if (consumable === null) return null;
  return out.take(stockAmount(says.amount, consumable), placeOf('amount')) === null ? null : consumable.id;
}
