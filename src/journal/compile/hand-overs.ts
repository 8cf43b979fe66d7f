/** What a note says of a hand-over: to whom the vehicle passed, how, for how much, and what goes along or stays. */
import type { HandedOver } from '../model.ts';
import type { NoteFields } from '../read/journal-source.ts';
import { believed, given, partsNamed } from './believed.ts';
import type { NoteAtHand } from './session.ts';

export function handedOverOf(list: NoteFields['handedOver'], context: NoteAtHand): HandedOver[] {
  const { names, out } = context;
  return believed(list, (entry) => {
    const { says, place, placeOf } = entry;
    const to = names.person(says.to, placeOf('to'));
    const price = given(says.price, (written) => names.money(written, placeOf('price')));
    if (price !== null && price < 0) {
      out.report('A808', placeOf('price'), 'The price of the vehicle is negative.', { hint: 'Write it without the minus.' });
    }
    if (says.price !== null && says.how !== 'sold') {
      const hint = 'Say `how: sold`, or leave the price out.';
      out.report('A621', placeOf('price'), `The vehicle was ${says.how}, and there is a price.`, { hint });
    }
    const goes = partsNamed(says.goes, entry, context, 'goes');
    const stays = partsNamed(says.stays, entry, context, 'stays');
    if (to === null) return null;
    return { ...says, to, price: says.how === 'sold' && price !== null && price >= 0 ? price : null, goes, stays, place };
  });
}
